import type { RowGraph } from './rowGraph.js';
import type { RowSet } from './rowSets.js';

/** The one network that all rows share, every joist keeping its place from row to row; nothing where they do not. */
export function alikeGraph({ rows, conflicts }: RowSet): RowGraph | undefined {
  const [{ graph }] = rows;
  const isShared = graph.runs.length === 1 && rows.every((row) => row.graph === graph);
  return isShared && conflicts.every((each) => each === conflicts[0]) ? graph : undefined;
}
