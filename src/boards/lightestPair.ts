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
 * The ways to divide two neighbouring rows that cost least together while their joints keep apart; nothing where there are none.
 * Whichever row is behind is carried on, and its next joint has only the last joint of the other row to keep clear of. Where every
 * joist keeps its place from one row to the next and each row is one run, those before are further away; elsewhere the two may
 * come to more than is told.
 */
export function lightestPair(
  below: RowGraph,
  above: RowGraph,
  conflicts: JointConflicts,
  costsBelow: Float64Array,
  costsAbove: Float64Array,
): Pair | undefined {
  if (below.nodes === 0 || above.nodes === 0) return undefined;
  const places = below.nodes * above.nodes;
  const table: Table = {
    beside: besideOf(below, above, conflicts),
    costs: [costsBelow, costsAbove],
    least: new Float64Array(places).fill(Infinity),
    next: new Int32Array(places).fill(-1),
  };
  table.least[places - 1] = 0;
  for (let a = below.nodes - 1; a >= 0; a--) {
    for (let b = above.nodes - 1; b >= 0; b--) if (a * above.nodes + b < places - 1) carryOn(table, a, b);
  }
  return table.least[0] === Infinity ? undefined : pairFrom(table);
}

/** Two neighbouring networks, and where a joint in each of them is. */
export interface Beside {
  readonly below: RowGraph;
  readonly above: RowGraph;
  readonly conflicts: JointConflicts;
  readonly ofBelow: Stations;
  readonly ofAbove: Stations;
}

/** The nodes of a network from end to end. */
interface Stations {
  /** Per node: the joist of the butt joint there, whichever piece ends at it; -1 where there need not be one. */
  readonly joist: Int32Array;
  /** Per node: how far along the row it is, by the joists before it. */
  readonly order: Float64Array;
}

export const besideOf = (below: RowGraph, above: RowGraph, conflicts: JointConflicts): Beside => {
  const ofBelow = stationsOf(below);
  return { below, above, conflicts, ofBelow, ofAbove: above === below ? ofBelow : stationsOf(above) };
};

function stationsOf({ nodes, starts, to, joist }: RowGraph): Stations {
  const at = new Int32Array(nodes).fill(NONE);
  const order = new Float64Array(nodes).fill(-1);
  for (let node = 0; node < nodes; node++) {
    if (at[node] === NONE) at[node] = -1;
    if (at[node] >= 0) order[node] = at[node];
    for (let arc = starts[node]; arc < starts[node + 1]; arc++) {
      const end = to[arc];
      order[end] = Math.max(order[end], order[node] + BEYOND);
      at[end] = at[end] === NONE || at[end] === joist[arc] ? joist[arc] : -1;
    }
  }
  if (nodes > 0) order[nodes - 1] = Infinity;
  return { joist: at, order };
}

const NONE = -2;
/** An end that is on no joist is so far beyond the last joist before it. */
const BEYOND = 0.5;

/** Whether the upper row is the next to be carried on. */
export const isAboveNext = ({ ofBelow, ofAbove }: Beside, a: number, b: number): boolean => ofBelow.order[a] > ofAbove.order[b];

/** Whether the row that is carried on along an arc keeps clear of the last joint of the other row. */
export function keepsClear(
  { below, above, conflicts, ofBelow, ofAbove }: Beside,
  a: number,
  b: number,
  isAbove: boolean,
  arc: number,
): boolean {
  if (isAbove) return ofBelow.joist[a] < 0 || isOpen(conflicts[ofBelow.joist[a]], above.joist[arc]);
  return below.joist[arc] < 0 || isOpen(conflicts[below.joist[arc]], ofAbove.joist[b]);
}

interface Table {
  readonly beside: Beside;
  readonly costs: readonly [below: Float64Array, above: Float64Array];
  /** Per place that the lower row has reached and that the upper one has: the least from there, and the arc to take. */
  readonly least: Float64Array;
  readonly next: Int32Array;
}

function carryOn({ beside, costs, least, next }: Table, a: number, b: number): void {
  const { below, above } = beside;
  const isAbove = isAboveNext(beside, a, b);
  const { starts, to } = isAbove ? above : below;
  const cost = costs[isAbove ? 1 : 0];
  const from = isAbove ? b : a;
  const here = a * above.nodes + b;
  for (let arc = starts[from]; arc < starts[from + 1]; arc++) {
    const sum = cost[arc] + least[isAbove ? a * above.nodes + to[arc] : to[arc] * above.nodes + b];
    if (sum >= least[here] || !keepsClear(beside, a, b, isAbove, arc)) continue;
    least[here] = sum;
    next[here] = arc;
  }
}

function pairFrom({ beside, least, next }: Table): Pair {
  const { below, above } = beside;
  const arcs: { below: number[]; above: number[] } = { below: [], above: [] };
  let [a, b] = [0, 0];
  while (a < below.nodes - 1 || b < above.nodes - 1) {
    const arc = next[a * above.nodes + b];
    if (isAboveNext(beside, a, b)) {
      arcs.above.push(arc);
      b = above.to[arc];
    } else {
      arcs.below.push(arc);
      a = below.to[arc];
    }
  }
  return { cost: least[0], ...arcs };
}
