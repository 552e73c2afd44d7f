import type { JointConflicts } from './jointConflicts.js';
import { lightestPair } from './lightestPair.js';
import { leastBeyond } from './rowPath.js';
import type { RowSort, RowSpace } from './rowSpace.js';

/** Whether some joints of two neighbouring rows must keep apart at all. */
export const mayClash = (conflicts: JointConflicts | undefined): conflicts is JointConflicts =>
  conflicts?.some((bits) => bits.some((word) => word !== 0)) ?? false;

/** What some rows, told from the first side on, come to at least by prices of arcs when they keep their joints apart two by two; nothing where none have to. */
export function leastByPairs(
  { sorts, set: { conflicts } }: RowSpace,
  rows: readonly number[],
  costsOf: (sort: RowSort) => Float64Array,
): number | undefined {
  const known = new Map<string, number>();
  const pair = (row: number): number => {
    const [below, above, apart] = [sorts[row], sorts[row + 1], conflicts[row]];
    const key = `${below.group} ${above.group} ${conflicts.indexOf(apart)}`;
    const sum = known.get(key) ?? lightestPair(below.graph, above.graph, apart, costsOf(below), costsOf(above))?.cost ?? Infinity;
    known.set(key, sum);
    return sum;
  };
  // What the rows come to up to the last one but one, and up to the last.
  let [before, sum] = [0, 0];
  let isPaired = false;
  for (const [at, row] of rows.entries()) {
    let next = sum + leastBeyond(sorts[row].graph, costsOf(sorts[row]))[0];
    if (at > 0 && rows[at - 1] === row - 1 && mayClash(conflicts[row - 1])) {
      next = Math.max(next, before + pair(row - 1));
      isPaired = true;
    }
    [before, sum] = [sum, next];
  }
  return isPaired ? sum : undefined;
}
