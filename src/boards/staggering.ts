import { alikeGraph } from './alikeGraph.js';
import { lightestPair } from './lightestPair.js';
import type { RowGraph } from './rowGraph.js';
import type { RowSet } from './rowSets.js';

/** Tells of divisions into rows whether they can be laid at all without regard to boards; undefined where that is not known beforehand. */
export function staggering(): (set: RowSet) => boolean | undefined {
  // Divisions whose rows are alike differ in the widths alone.
  const known = new Map<RowGraph, boolean>();
  return (set) => {
    const graph = alikeGraph(set);
    if (graph === undefined) return;
    if (set.rows.length === 1) return true;
    const nothing = new Float64Array(graph.to.length);
    const may = known.get(graph) ?? lightestPair(graph, graph, set.conflicts[0], nothing, nothing) !== undefined;
    known.set(graph, may);
    return may;
  };
}
