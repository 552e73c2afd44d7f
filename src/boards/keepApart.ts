import { blockedBy, type JointConflicts, WORD } from './jointConflicts.js';
import { leastToEnd, type RowGraph } from './rowGraph.js';

/** Pieces that are laid on trial before the search gives up. */
const MOST_TRIED = 20_000;

/** Rows, what the joints of one keep from the next, and the pieces that may still be tried. */
interface Trial {
  readonly rows: readonly RowGraph[];
  readonly conflicts: readonly JointConflicts[];
  readonly words: number;
  left: number;
}

/** A row that is to be divided: butt joints at the end of each arc, more than can be where one is blocked, and the fewest from each node. */
interface Row {
  readonly index: number;
  readonly graph: RowGraph;
  readonly joints: Float64Array;
  readonly least: Float64Array;
}

/**
 * Whether the butt joints of all rows can be kept apart, as far as a short search can tell that divides no row into more than one
 * piece beyond the fewest.
 *
 * @param words - of bits for the joists
 */
export const keepApart = (rows: readonly RowGraph[], conflicts: readonly JointConflicts[], words: number): boolean =>
  fromRow({ rows, conflicts, words, left: MOST_TRIED }, 0, new Int32Array(words));

function fromRow(trial: Trial, index: number, blocked: Int32Array): boolean {
  if (index === trial.rows.length) return true;
  const graph = trial.rows[index];
  const isBlocked = (joist: number): boolean => (blocked[Math.floor(joist / WORD)] & (1 << (joist % WORD))) !== 0;
  const joints = Float64Array.from(graph.joist, (joist) => (joist < 0 ? 0 : isBlocked(joist) ? Infinity : 1));
  const least = leastToEnd(graph, joints);
  return least[0] < Infinity && fromNode(trial, { index, graph, joints, least }, 0, []);
}

function fromNode(trial: Trial, row: Row, node: number, joists: readonly number[]): boolean {
  const { index, graph, joints, least } = row;
  if (node === graph.nodes - 1) {
    const bits = new Int32Array(trial.words);
    const isLast = index >= trial.conflicts.length;
    return fromRow(trial, index + 1, isLast ? bits : blockedBy(trial.conflicts[index], { joists, bits }));
  }
  for (let arc = graph.starts[node]; arc < graph.starts[node + 1]; arc++) {
    if (joists.length + joints[arc] + least[graph.to[arc]] > least[0] + 1) continue;
    if (trial.left-- <= 0) return false;
    const joist = graph.joist[arc];
    if (fromNode(trial, row, graph.to[arc], joist < 0 ? joists : [...joists, joist])) return true;
  }
  return false;
}
