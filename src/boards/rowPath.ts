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

/** Ways from end to end whose cost is no more than `most`, of which at most `limit` are found; whether these are all. */
export function waysWithin(
  graph: RowGraph,
  costs: Float64Array,
  blocked: Int32Array | undefined,
  most: number,
  limit: number,
): { readonly ways: { readonly arcs: readonly number[]; readonly cost: number }[]; readonly all: boolean } {
  const least = leastBeyond(graph, costs, blocked);
  const ways: { arcs: readonly number[]; cost: number }[] = [];
  const arcs: number[] = [];
  let all = true;
  const walk = (node: number, spent: number): void => {
    if (node === graph.nodes - 1) {
      ways.push({ arcs: [...arcs], cost: spent });
      return;
    }
    for (let arc = graph.starts[node]; arc < graph.starts[node + 1]; arc++) {
      if (spent + costs[arc] + least[graph.to[arc]] > most || !isOpen(blocked, graph.joist[arc])) continue;
      if (ways.length >= limit) {
        all = false;
        return;
      }
      arcs.push(arc);
      walk(graph.to[arc], spent + costs[arc]);
      arcs.pop();
    }
  };
  if (graph.nodes > 0 && least[0] <= most) walk(0, 0);
  return { ways, all };
}

/** How often the cost that a way may have beyond the least is halved before any ways will do. */
const HALVINGS = 12;

/** The same, but where there are more than `limit` of them, the cheap ones. */
export function cheapWaysWithin(
  graph: RowGraph,
  costs: Float64Array,
  blocked: Int32Array | undefined,
  most: number,
  limit: number,
): ReturnType<typeof waysWithin> {
  const found = waysWithin(graph, costs, blocked, most, limit);
  if (found.all) return found;
  const [least] = leastBeyond(graph, costs, blocked);
  let { ways } = found;
  for (let halved = 0, spread = most - least; halved < HALVINGS; halved++) {
    spread = Math.floor(spread / 2);
    const fewer = waysWithin(graph, costs, blocked, least + spread, limit);
    ways = fewer.ways;
    if (fewer.all) break;
  }
  return { ways, all: false };
}
