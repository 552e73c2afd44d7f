import { type JointConflicts, WORD } from './jointConflicts.js';
import type { RowGraph } from './rowGraph.js';
import { isOpen, leastBeyond } from './rowPath.js';

/** What is known of a row beside some joints: the least to each node up to the last that is kept off, and to the end. */
interface Level {
  readonly blocked: Int32Array;
  readonly toNode: Float64Array;
  readonly last: number;
  readonly least: number;
}

/** The arcs of a network by the node that they lead to, and where those of each joist lead. */
interface Arriving {
  readonly starts: Int32Array;
  readonly arcs: Int32Array;
  readonly from: Int32Array;
  /** Per joist. */
  readonly low: Int32Array;
  readonly high: Int32Array;
  /** Per node: the first from which an arc leads beyond it. */
  readonly beyond: Int32Array;
}

/**
 * The least sum of `costs` that a row comes to beside butt joints on given joists of its neighbour. Joists are asked for from one
 * end of the row to the other: those before the last are as they were when they were asked for, and only what the last one
 * changes is looked at again.
 */
export function leastBeside(
  graph: RowGraph,
  costs: Float64Array,
  conflicts: JointConflicts,
): (joists: readonly number[]) => number {
  const arriving = arrivingAt(graph, conflicts.length);
  const toEnd = leastBeyond(graph, costs);
  const first: Level = {
    blocked: new Int32Array(conflicts[0].length),
    toNode: new Float64Array(graph.nodes),
    last: 0,
    least: toEnd[0],
  };
  const levels = [first];
  /** Per joist: the nodes that a joint on it keeps the row off. */
  const reached: Nodes[] = [];
  return (joists) => {
    const joist = joists[joists.length - 1];
    const nodes = reached[joist] ?? nodesOf(arriving, conflicts[joist]);
    reached[joist] = nodes;
    const before = levels[joists.length - 1];
    const level = nodes.high < 0 ? before : withJoint({ graph, costs, arriving, toEnd }, before, conflicts[joist], nodes);
    levels[joists.length] = level;
    return level.least;
  };
}

interface Row {
  readonly graph: RowGraph;
  readonly costs: Float64Array;
  readonly arriving: Arriving;
  readonly toEnd: Float64Array;
}

/** The first and the last of some nodes; none where the last is below nothing. */
interface Nodes {
  readonly low: number;
  readonly high: number;
}

function withJoint({ graph, costs, arriving, toEnd }: Row, before: Level, conflict: Int32Array, { low, high }: Nodes): Level {
  const blocked = before.blocked.slice();
  for (let word = 0; word < blocked.length; word++) blocked[word] |= conflict[word];
  const start = Math.min(low, before.last + 1);
  const last = Math.max(high, before.last);
  const toNode = before.toNode.slice();
  for (let node = start; node <= last; node++) {
    let best = Infinity;
    for (let at = arriving.starts[node]; at < arriving.starts[node + 1]; at++) {
      const arc = arriving.arcs[at];
      const sum = toNode[arriving.from[arc]] + costs[arc];
      if (sum < best && isOpen(blocked, graph.joist[arc])) best = sum;
    }
    toNode[node] = best;
  }
  // Nothing beyond the last node is kept off.
  let least = Infinity;
  for (let node = arriving.beyond[last]; node <= last; node++) {
    for (let arc = graph.starts[node]; arc < graph.starts[node + 1]; arc++) {
      if (graph.to[arc] > last) least = Math.min(least, toNode[node] + costs[arc] + toEnd[graph.to[arc]]);
    }
  }
  return { blocked, toNode, last, least };
}

/** The nodes that these joists are at. */
function nodesOf({ low, high }: Arriving, joists: Int32Array): Nodes {
  const found = { low: Infinity, high: -1 };
  for (let joist = 0; joist < low.length; joist++) {
    if (high[joist] < 0 || (joists[Math.floor(joist / WORD)] & (1 << (joist % WORD))) === 0) continue;
    found.low = Math.min(found.low, low[joist]);
    found.high = Math.max(found.high, high[joist]);
  }
  return found;
}

function arrivingAt({ nodes, starts, to, joist }: RowGraph, joists: number): Arriving {
  const counts = new Int32Array(nodes + 1);
  for (const node of to) counts[node + 1]++;
  for (let node = 0; node < nodes; node++) counts[node + 1] += counts[node];
  const next = counts.slice();
  const arcs = new Int32Array(to.length);
  const from = new Int32Array(to.length);
  const low = new Int32Array(joists).fill(nodes);
  const high = new Int32Array(joists).fill(-1);
  const furthest = new Int32Array(nodes);
  for (let node = 0; node < nodes; node++) {
    for (let arc = starts[node]; arc < starts[node + 1]; arc++) {
      from[arc] = node;
      arcs[next[to[arc]]++] = arc;
      furthest[node] = Math.max(furthest[node], to[arc]);
      if (joist[arc] < 0) continue;
      low[joist[arc]] = Math.min(low[joist[arc]], to[arc]);
      high[joist[arc]] = Math.max(high[joist[arc]], to[arc]);
    }
  }
  const beyond = new Int32Array(nodes);
  for (let node = 0, first = 0; node < nodes; node++) {
    while (first < node && furthest[first] <= node) first++;
    beyond[node] = first;
  }
  return { starts: counts, arcs, from, low, high, beyond };
}
