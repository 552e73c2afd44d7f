import { isOpen } from './rowPath.js';
import type { RowSpace } from './rowSpace.js';

/**
 * In which order rows are fixed: those beside whose pieces something may go first, if they are at the sides, for the rest of the
 * boards can be told once they are known; then from the side that begins with a row of a rarer sort. Where it makes a difference from
 * which side rows are looked at, from the first to the last.
 */
export function orderOfRows(space: RowSpace, withStrips: readonly number[], isLong: boolean): number[] {
  const { sorts, groups } = space;
  const upwards = sorts.map((_, row) => row);
  const last = sorts.length - 1;
  const isStrip = (row: number): boolean => withStrips.includes(sorts[row].group);
  if (last < 1 || !isMutual(space)) return upwards;
  if (isLong && last > 1 && isStrip(0) && isStrip(last)) return [0, last, ...upwards.slice(1, last)];
  if (isStrip(0) !== isStrip(last)) return isStrip(0) ? upwards : upwards.reverse();
  const [first, other] = [groups[sorts[0].group], groups[sorts[last].group]];
  return other.count < first.count ? upwards.reverse() : upwards;
}

/** Whether rows keep their joints apart from those below as from those above. */
function isMutual({ alike, set }: RowSpace): boolean {
  if (alike === undefined) return false;
  const [conflicts] = set.conflicts;
  const clash = (one: number, other: number): boolean => !isOpen(conflicts[one], other);
  return conflicts.every((_, one) => conflicts.every((_, other) => clash(one, other) === clash(other, one)));
}
