import { blockedBy, WORD } from './jointConflicts.js';
import { leastBeyond, waysWithin } from './rowPath.js';
import type { RowSet } from './rowSets.js';

/** Ways to divide a row that are tried above each way of the row below, and rows that are tried in all. */
const MOST_WAYS = 30;
const MOST_TRIED = 3_000;

/**
 * Whether the butt joints of all rows can be kept apart, as far as a short search can tell that divides no row into more than one
 * piece beyond the fewest.
 */
export function keepApart({ rows, conflicts }: Pick<RowSet, 'rows' | 'conflicts'>, words: number): boolean {
  let left = MOST_TRIED;
  const canGoOn = (row: number, blocked: Int32Array | undefined): boolean => {
    if (row === rows.length) return true;
    const { graph } = rows[row];
    const joints = Float64Array.from(graph.joist, (joist) => (joist < 0 ? 0 : 1));
    const most = leastBeyond(graph, joints, blocked)[0] + 1;
    if (most === Infinity) return false;
    return waysWithin(graph, joints, blocked, most, MOST_WAYS).ways.some(({ arcs }) => {
      if (left-- <= 0) return false;
      const joists = arcs.map((arc) => graph.joist[arc]).filter((joist) => joist >= 0);
      const bits = new Int32Array(words);
      for (const joist of joists) bits[Math.floor(joist / WORD)] |= 1 << (joist % WORD);
      return canGoOn(row + 1, row < conflicts.length ? blockedBy(conflicts[row], { joists, bits }) : undefined);
    });
  };
  return canGoOn(0, undefined);
}
