import type { PieceKind } from './pieceKinds.js';
import type { Stock } from './stocksOf.js';
import { type Way, waysToCut } from './waysToCut.js';

/**
 * What one board gives: pieces of its whole width one after another from its low end, the rest of its length in strips side by
 * side. A strip is as wide as its first piece; narrower ones may follow in it. Pieces are told by kind.
 */
export interface KindsOnBoard {
  readonly stock: number;
  readonly whole: readonly number[];
  readonly strips: readonly { readonly width: number; readonly kinds: readonly number[] }[];
}

/** The boards there may be: what those of each stock count for, and the most that all may come to. */
export interface BoardLimits {
  readonly caps: readonly { readonly of: readonly number[]; readonly most: number }[];
  /** Per stock. */
  readonly available: readonly number[];
}

/** A count of steps that several searches may share. */
export interface Steps {
  left: number;
}

/** How much of a board a kind takes, such that what fits on a board together never takes more than it has. */
export interface Shares {
  readonly kinds: Float64Array;
  readonly boards: readonly number[];
}

/**
 * Cuts pieces from at most so many boards. Board after board is cut for the largest piece that is left, the ways that waste
 * least first, and only ways to which no other piece could be added: nothing else needs to be tried. What is left after some
 * boards and could not be cut from the rest is remembered.
 *
 * @returns the boards; `none` when there is no way; `unknown` when the steps ran out first
 */
export function packKinds(
  stocks: readonly Stock[],
  kinds: readonly PieceKind[],
  counts: Int32Array,
  limits: BoardLimits,
  shares: readonly Shares[],
  steps: Steps,
): readonly KindsOnBoard[] | 'none' | 'unknown' {
  const wanted = wantedOf(kinds, stocks, counts, shares, limits);
  const { left, share } = wanted;
  const slack = wanted.capacity - left.reduce((total, count, at) => total + share[at] * count, 0);
  if (slack < 0) return 'none';
  const packing: Packing = {
    stocks,
    wanted,
    caps: limits.caps,
    spare: limits.caps.map(({ most }) => most),
    available: [...limits.available],
    failed: new Set(),
    chosen: [],
    steps,
    sure: true,
  };
  if (!cut(packing, slack)) return packing.sure ? 'none' : 'unknown';
  return packing.chosen.map(({ stock, way }) => ({
    stock,
    whole: way.whole.map((at) => wanted.kinds[at]),
    strips: way.strips.map((strip) => ({ width: strip.width, kinds: strip.kinds.map((at) => wanted.kinds[at]) })),
  }));
}

/** The kinds of pieces that are wanted, told by their place among these. */
interface WantedKinds {
  readonly kinds: readonly number[];
  readonly widths: readonly number[];
  /** Per stock. */
  readonly alone: readonly (readonly boolean[])[];
  /** Per stock. */
  readonly sizes: readonly (readonly number[])[];
  readonly left: number[];
  readonly share: readonly number[];
  readonly boards: readonly number[];
  /** What all boards come to. */
  readonly capacity: number;
}

/** Kinds that are there at all, with the shares and the cap by which they fill boards most. */
function wantedOf(
  kinds: readonly PieceKind[],
  stocks: readonly Stock[],
  counts: Int32Array,
  shares: readonly Shares[],
  { caps }: BoardLimits,
): WantedKinds {
  const present: number[] = [];
  for (let kind = 0; kind < counts.length; kind++) if (counts[kind] > 0) present.push(kind);
  let best = { shares: shares[0], boards: stocks.map(() => Infinity), capacity: Infinity, filled: -1 };
  for (const each of shares) {
    let total = 0;
    for (const kind of present) total += each.kinds[kind] * counts[kind];
    for (const { of, most } of caps) {
      if (of.some((one) => one === 0)) continue;
      const perUnit = Math.max(...of.map((one, stock) => each.boards[stock] / one));
      const filled = total / (perUnit * most);
      if (filled > best.filled) best = { shares: each, boards: of.map((one) => one * perUnit), capacity: perUnit * most, filled };
    }
  }
  return {
    kinds: present,
    widths: present.map((kind) => kinds[kind].width),
    alone: stocks.map((_, stock) => present.map((kind) => kinds[kind].alone[stock])),
    sizes: stocks.map((_, stock) => present.map((kind) => kinds[kind].sizes[stock])),
    left: present.map((kind) => counts[kind]),
    share: present.map((kind) => best.shares.kinds[kind]),
    boards: best.boards,
    capacity: best.capacity,
  };
}

interface Packing {
  readonly stocks: readonly Stock[];
  readonly wanted: WantedKinds;
  readonly caps: BoardLimits['caps'];
  /** Per cap: what is left of it. */
  readonly spare: number[];
  readonly available: number[];
  /** Sets of pieces that were left and could not be cut from the boards that were. */
  readonly failed: Set<string>;
  readonly chosen: { readonly stock: number; readonly way: Way }[];
  readonly steps: Steps;
  sure: boolean;
}

/** Cuts what is left, of which no more than `slack` may go to waste. */
function cut(packing: Packing, slack: number): boolean {
  const { stocks, wanted, caps, spare, available, failed, steps } = packing;
  const first = wanted.left.findIndex((count) => count > 0);
  if (first < 0) return true;
  const key = `${wanted.left.join(' ')};${spare.join(' ')};${available.join(' ')}`;
  if (failed.has(key)) return false;
  for (let stock = 0; stock < stocks.length; stock++) {
    if (available[stock] <= 0 || wanted.sizes[stock][first] === Infinity) continue;
    if (caps.some(({ of }, at) => of[stock] > spare[at])) continue;
    if (cutOne(packing, stock, first, slack)) return true;
  }
  if (steps.left > 0) failed.add(key);
  return false;
}

function cutOne(packing: Packing, stock: number, first: number, slack: number): boolean {
  const { stocks, wanted, caps, spare, available, chosen, steps } = packing;
  const { length, width, kerf } = stocks[stock];
  const { ways, all, placings } = waysToCut(
    { length: length + kerf, width, kerf },
    { ...wanted, sizes: wanted.sizes[stock], alone: wanted.alone[stock] },
    first,
  );
  packing.sure &&= all;
  steps.left -= placings;
  available[stock]--;
  for (const [at, { of }] of caps.entries()) spare[at] -= of[stock];
  for (const way of ways) {
    const waste = wanted.boards[stock] === Infinity ? 0 : wanted.boards[stock] - way.share;
    if (waste > slack) break;
    if (steps.left <= 0) {
      packing.sure = false;
      break;
    }
    take(wanted.left, way, -1);
    chosen.push({ stock, way });
    if (cut(packing, slack - waste)) return true;
    chosen.pop();
    take(wanted.left, way, 1);
  }
  available[stock]++;
  for (const [at, { of }] of caps.entries()) spare[at] += of[stock];
  return false;
}

function take(left: number[], { whole, strips }: Way, sign: 1 | -1): void {
  for (const at of whole) left[at] += sign;
  for (const strip of strips) for (const at of strip.kinds) left[at] += sign;
}
