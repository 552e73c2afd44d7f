import type { JointConflicts } from './jointConflicts.js';
import type { RowGraph } from './rowGraph.js';
import { isOpen } from './rowPath.js';

/** Two neighbouring rows: the arcs of each, and what they cost together. */
export interface Pair {
  readonly cost: number;
  readonly below: readonly number[];
  readonly above: readonly number[];
}

/**
 * The ways to divide two neighbouring rows of one network that cost least together while their joints keep apart; nothing where
 * there are none. Every joist keeps its place from one row to the next, so whichever row is behind is carried on, and its next
 * joint has only the last joint of the other row to keep clear of: those before are further away.
 */
export function lightestPair(
  graph: RowGraph,
  conflicts: JointConflicts,
  costsBelow: Float64Array,
  costsAbove: Float64Array,
): Pair | undefined {
  if (graph.nodes === 0) return undefined;
  const table: Table = {
    graph,
    conflicts,
    costs: [costsBelow, costsAbove],
    joistAt: joistsOfNodes(graph),
    least: new Float64Array(graph.nodes * graph.nodes).fill(Infinity),
    next: new Int32Array(graph.nodes * graph.nodes).fill(-1),
  };
  const last = graph.nodes - 1;
  table.least[last * graph.nodes + last] = 0;
  for (let a = last; a >= 0; a--) {
    for (let b = last; b >= 0; b--) if (a < last || b < last) carryOn(table, a, b);
  }
  return table.least[0] === Infinity ? undefined : pairFrom(table);
}

interface Table {
  readonly graph: RowGraph;
  readonly conflicts: JointConflicts;
  readonly costs: readonly [below: Float64Array, above: Float64Array];
  readonly joistAt: Int32Array;
  /** Per place that the lower row has reached and that the upper one has: the least from there, and the arc to take. */
  readonly least: Float64Array;
  readonly next: Int32Array;
}

function carryOn({ graph, conflicts, costs, joistAt, least, next }: Table, a: number, b: number): void {
  const { nodes, starts, to, joist } = graph;
  const lower = a <= b;
  const [from, other, cost] = lower ? [a, joistAt[b], costs[0]] : [b, joistAt[a], costs[1]];
  const blocked = other < 0 ? undefined : conflicts[other];
  const here = a * nodes + b;
  for (let arc = starts[from]; arc < starts[from + 1]; arc++) {
    const sum = cost[arc] + least[lower ? to[arc] * nodes + b : a * nodes + to[arc]];
    if (sum >= least[here] || !isOpen(blocked, joist[arc])) continue;
    least[here] = sum;
    next[here] = arc;
  }
}

function pairFrom({ graph: { nodes, to }, least, next }: Table): Pair {
  const below: number[] = [];
  const above: number[] = [];
  let [a, b] = [0, 0];
  while (a < nodes - 1 || b < nodes - 1) {
    const arc = next[a * nodes + b];
    if (a <= b) {
      below.push(arc);
      a = to[arc];
    } else {
      above.push(arc);
      b = to[arc];
    }
  }
  return { cost: least[0], below, above };
}

/** Per node: the joist of the butt joint there; -1 at a wall. */
export function joistsOfNodes({ nodes, to, joist }: RowGraph): Int32Array {
  const at = new Int32Array(nodes).fill(-1);
  for (let arc = 0; arc < to.length; arc++) at[to[arc]] = joist[arc];
  return at;
}
