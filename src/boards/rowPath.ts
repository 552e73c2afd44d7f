import { WORD } from './jointConflicts.js';
import type { RowGraph } from './rowGraph.js';
import type { RowSort, RowSpace } from './rowSpace.js';

/** One way to divide a row. */
export interface RowPath {
  readonly sort: RowSort;
  readonly arcs: readonly number[];
  /** The kinds of its pieces, and how many of each. */
  readonly kinds: readonly number[];
  readonly counts: readonly number[];
  /** Per objective. */
  readonly costs: readonly number[];
  /** Joists under its butt joints, and as bits. */
  readonly joists: readonly number[];
  readonly bits: Int32Array;
}

export function rowPath({ words }: RowSpace, sort: RowSort, arcs: readonly number[]): RowPath {
  const counted = new Map<number, number>();
  const joists: number[] = [];
  const bits = new Int32Array(words);
  for (const arc of arcs) {
    const kind = sort.kinds[arc];
    if (kind >= 0) counted.set(kind, (counted.get(kind) ?? 0) + 1);
    const joist = sort.graph.joist[arc];
    if (joist < 0) continue;
    joists.push(joist);
    bits[Math.floor(joist / WORD)] |= 1 << (joist % WORD);
  }
  const costs = sort.costs.map((of) => arcs.reduce((sum, arc) => sum + of[arc], 0));
  return { sort, arcs, kinds: [...counted.keys()], counts: [...counted.values()], costs, joists, bits };
}

/** How many pieces of each kind these rows have. */
export function countsOf(kinds: number, paths: readonly RowPath[]): Int32Array {
  const all = new Int32Array(kinds);
  for (const path of paths) for (let at = 0; at < path.kinds.length; at++) all[path.kinds[at]] += path.counts[at];
  return all;
}

/** Whether two sets of joists, as bits, have any in common. */
export function haveCommon(one: Int32Array, other: Int32Array): boolean {
  for (let word = 0; word < one.length; word++) if ((one[word] & other[word]) !== 0) return true;
  return false;
}

/** Whether a butt joint may be on this joist. */
export const isOpen = (blocked: Int32Array | undefined, joist: number): boolean =>
  joist < 0 || blocked === undefined || (blocked[Math.floor(joist / WORD)] & (1 << (joist % WORD))) === 0;

/** For each node, the least sum of `costs` over the arcs of a way from it to the end that keeps off the blocked joists. */
export function leastBeyond({ nodes, starts, to, joist }: RowGraph, costs: Float64Array, blocked?: Int32Array): Float64Array {
  const least = new Float64Array(nodes).fill(Infinity);
  if (nodes > 0) least[nodes - 1] = 0;
  for (let node = nodes - 2; node >= 0; node--) {
    let best = Infinity;
    for (let arc = starts[node]; arc < starts[node + 1]; arc++) {
      const sum = costs[arc] + least[to[arc]];
      if (sum < best && isOpen(blocked, joist[arc])) best = sum;
    }
    least[node] = best;
  }
  return least;
}

/** The arcs of the way that costs least; nothing where there is none. */
export function lightestWay(
  graph: RowGraph,
  costs: Float64Array,
  blocked: Int32Array | undefined,
  least: Float64Array,
): number[] {
  const arcs: number[] = [];
  let node = 0;
  while (node < graph.nodes - 1) {
    let best = -1;
    let lightest = Infinity;
    for (let arc = graph.starts[node]; arc < graph.starts[node + 1]; arc++) {
      const sum = costs[arc] + least[graph.to[arc]];
      if (sum >= lightest || !isOpen(blocked, graph.joist[arc])) continue;
      lightest = sum;
      best = arc;
    }
    if (best < 0) return [];
    arcs.push(best);
    node = graph.to[best];
  }
  return arcs;
}

/** Ways from end to end that are asked for. */
export interface WaysAsked {
  /** Joists that no butt joint may be on. */
  readonly blocked: Int32Array | undefined;
  /** What a way may cost. */
  readonly most: number;
  /** So many are enough. */
  readonly limit: number;
  /** What butt joints on these joists add for the row beyond at least; more joints never add less. */
  readonly added?: (joists: readonly number[]) => number;
}

export interface Ways {
  readonly ways: readonly { readonly arcs: readonly number[]; readonly cost: number; readonly added: number }[];
  /** Whether these are all. */
  readonly all: boolean;
  /** Places that were visited. */
  readonly visited: number;
}

/** Places that are visited on the search for ways. */
const MOST_VISITED = 10_000;

/** Ways from end to end whose cost, with what they add, is no more than asked. */
export function waysWithin(graph: RowGraph, costs: Float64Array, { blocked, most, limit, added }: WaysAsked): Ways {
  const least = leastBeyond(graph, costs, blocked);
  const ways: { arcs: readonly number[]; cost: number; added: number }[] = [];
  const arcs: number[] = [];
  const joists: number[] = [];
  let all = true;
  let visited = 0;
  const walk = (node: number, spent: number, more: number): void => {
    all &&= visited++ < MOST_VISITED;
    if (node === graph.nodes - 1) {
      if (ways.length < limit) ways.push({ arcs: [...arcs], cost: spent, added: more });
      else all = false;
      return;
    }
    for (let arc = graph.starts[node]; arc < graph.starts[node + 1] && all; arc++) {
      const sum = spent + costs[arc];
      const beyond = sum + least[graph.to[arc]];
      const joist = graph.joist[arc];
      if (beyond + more > most || !isOpen(blocked, joist)) continue;
      arcs.push(arc);
      if (joist < 0 || added === undefined) walk(graph.to[arc], sum, more);
      else {
        joists.push(joist);
        const now = added(joists);
        if (beyond + now <= most) walk(graph.to[arc], sum, now);
        joists.pop();
      }
      arcs.pop();
    }
  };
  if (graph.nodes > 0 && least[0] <= most) walk(0, 0, 0);
  return { ways, all, visited };
}

/** How often the cost is halved below which there are few enough ways, and places that are visited for it. */
const HALVINGS = 8;
const MOST_HALVING = 3000;

/** The same, but where there are more than enough of them, the cheap ones. */
export function cheapWaysWithin(graph: RowGraph, costs: Float64Array, asked: WaysAsked): Ways {
  let found = waysWithin(graph, costs, asked);
  if (found.all) return found;
  let [least] = leastBeyond(graph, costs, asked.blocked);
  let { most } = asked;
  let { visited } = found;
  for (let halved = 0; halved < HALVINGS && visited < MOST_VISITED + MOST_HALVING; halved++) {
    const middle = least + Math.floor((most - least) / 2);
    const fewer = waysWithin(graph, costs, { ...asked, most: middle });
    visited += fewer.visited;
    if (fewer.ways.length > 0) found = fewer;
    if (fewer.all) least = middle;
    else most = middle;
  }
  return { ...found, all: false, visited };
}
