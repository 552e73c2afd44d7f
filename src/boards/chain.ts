import { blockedBy, type JointConflicts } from './jointConflicts.js';
import { leastToEnd, type RowGraph } from './rowGraph.js';
import type { RowPattern } from './rowPatterns.js';

/** A cost of the whole layout, and what it may come to. */
export interface CappedCost {
  /** Per row, per arc of its graph; rows that are alike share an array. */
  readonly arcs: readonly Float64Array[];
  readonly cap: number;
}

export interface RowsToLay {
  readonly graphs: readonly RowGraph[];
  /** Per row, per arc: the kind of piece; -1 across an opening. */
  readonly kinds: readonly Int32Array[];
  readonly kindCount: number;
  /** Between each row and the next. */
  readonly conflicts: readonly JointConflicts[];
  readonly words: number;
}

/** Rows with the patterns that each of them may have, one after another from the low side. */
export interface Chain {
  readonly rows: RowsToLay;
  readonly costs: readonly CappedCost[];
  readonly patterns: readonly (readonly RowPattern[])[];
  /** Per cost, per row: what the rows above it cost at least. */
  readonly rest: readonly (readonly number[])[];
  /** Costs whose least sum from each pattern on is known: per row, per pattern. */
  readonly carried: readonly { readonly cost: number; readonly onward: readonly Float64Array[] }[];
}

/** Per row: what it costs at least. */
export function leastOfRows(graphs: readonly RowGraph[], arcs: readonly Float64Array[]): number[] {
  const known = new Map<Float64Array, number>();
  return graphs.map((graph, row) => {
    const least = known.get(arcs[row]) ?? leastToEnd(graph, arcs[row])[0];
    known.set(arcs[row], least);
    return least;
  });
}

/** Per row: what the rows above it come to at least. */
export function restAbove(least: readonly number[]): number[] {
  const rest = least.map(() => 0);
  for (let row = rest.length - 2; row >= 0; row--) rest[row] = rest[row + 1] + least[row + 1];
  return rest;
}

/** Pairs of patterns of neighbouring rows that are compared, at most. */
const MOST_PAIRS = 3e5;
const MOST_PAIRS_OFTEN = 1e5;

const pairsOf = ({ patterns }: Chain): number =>
  patterns.slice(1).reduce((sum, list, row) => sum + list.length * patterns[row].length, 0);

/** Costs whose sums over the rest of the rows are kept, the tightest first. */
const MOST_CARRIED = 4;

/** Leaves out patterns that are in no chain of rows within the caps. Too many patterns are left as they are. */
export function narrow(chain: Chain, order: readonly number[]): Chain | 'none' {
  if (pairsOf(chain) > MOST_PAIRS) return chain;
  let narrowed = chain;
  for (const cost of order.slice(0, MOST_CARRIED)) {
    const next = narrowBy(narrowed, cost);
    if (next === 'none') return 'none';
    narrowed = next;
  }
  return narrowed;
}

function narrowBy(chain: Chain, cost: number): Chain | 'none' {
  const own = chain.patterns.map((list) => Float64Array.from(list, (pattern) => pattern.costs[cost]));
  const backward = carryDown(chain, own);
  const forward = carryUp(chain, own);
  const { cap } = chain.costs[cost];
  const stays = own.map((costs, row) => costs.map((each, at) => (forward[row][at] + backward[row][at] - each <= cap ? 1 : 0)));
  if (stays.some((list) => !list.includes(1))) return 'none';
  const kept = (sums: Float64Array, row: number): Float64Array => sums.filter((_, at) => stays[row][at] === 1);
  return {
    ...chain,
    patterns: chain.patterns.map((list, row) => list.filter((_, at) => stays[row][at] === 1)),
    carried: [
      ...chain.carried.map((each) => ({ cost: each.cost, onward: each.onward.map(kept) })),
      { cost, onward: backward.map(kept) },
    ],
  };
}

/** Costs in the order of how little their caps leave over the least that all rows come to. */
export function tightestFirst({ rows, costs }: Chain): number[] {
  const filled = costs.map(({ arcs, cap }) => {
    if (cap === 0) return 1;
    return leastOfRows(rows.graphs, arcs).reduce((sum, each) => sum + each, 0) / cap;
  });
  return costs.map((_, k) => k).sort((a, b) => filled[b] - filled[a] || a - b);
}

/** Per row and pattern: the least cost of it and all rows above it, given what each pattern costs. */
function carryDown({ rows, patterns }: Chain, costs: readonly Float64Array[]): Float64Array[] {
  const sums = costs.map((each) => each.slice());
  for (let row = patterns.length - 2; row >= 0; row--) {
    for (const [at, pattern] of patterns[row].entries()) {
      const blocked = blockedBy(rows.conflicts[row], pattern);
      let least = Infinity;
      for (let above = 0; above < sums[row + 1].length; above++) {
        if (sums[row + 1][above] < least && !meets(patterns[row + 1][above].bits, blocked)) least = sums[row + 1][above];
      }
      sums[row][at] += least;
    }
  }
  return sums;
}

/** The same for all rows below it. */
function carryUp({ rows, patterns }: Chain, costs: readonly Float64Array[]): Float64Array[] {
  const sums = costs.map((each) => each.slice());
  for (let row = 1; row < patterns.length; row++) {
    const blocked = patterns[row - 1].map((pattern) => blockedBy(rows.conflicts[row - 1], pattern));
    for (const [at, pattern] of patterns[row].entries()) {
      let least = Infinity;
      for (let below = 0; below < blocked.length; below++) {
        if (sums[row - 1][below] < least && !meets(pattern.bits, blocked[below])) least = sums[row - 1][below];
      }
      sums[row][at] += least;
    }
  }
  return sums;
}

/**
 * The chain of patterns that costs least, given what each pattern costs. With too many to compare, the joints of neighbouring
 * rows are not kept apart: it costs no more than the true one.
 */
export function lightestChain(chain: Chain, costs: readonly Float64Array[]): { weight: number; patterns: number[] } {
  const apart = pairsOf(chain) <= MOST_PAIRS_OFTEN;
  const sums = apart ? carryDown(chain, costs) : costs;
  const chosen: number[] = [];
  let weight = 0;
  for (const [row, list] of chain.patterns.entries()) {
    const blocked =
      row === 0 || !apart ? undefined : blockedBy(chain.rows.conflicts[row - 1], chain.patterns[row - 1][chosen[row - 1]]);
    let best = -1;
    for (let at = 0; at < list.length; at++) {
      if (best >= 0 && sums[row][at] >= sums[row][best]) continue;
      if (blocked === undefined || !meets(list[at].bits, blocked)) best = at;
    }
    chosen.push(best);
    if (row === 0 || !apart) weight += sums[row][best];
  }
  return { weight, patterns: chosen };
}

export function meets(a: Int32Array, b: Int32Array): boolean {
  for (let word = 0; word < a.length; word++) if ((a[word] & b[word]) !== 0) return true;
  return false;
}
