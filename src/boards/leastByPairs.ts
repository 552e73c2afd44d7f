import { lightestPair } from './lightestPair.js';
import { leastBeyond } from './rowPath.js';
import type { RowSort, RowSpace } from './rowSpace.js';

/** Whether rows that are alike can be laid at all without regard to boards; undefined where that is not known beforehand. */
export function canBeStaggered({ alike, sorts, set }: RowSpace): boolean | undefined {
  if (alike === undefined) return undefined;
  if (sorts.length === 1) return true;
  const nothing = new Float64Array(alike.to.length);
  return lightestPair(alike, set.conflicts[0], nothing, nothing) !== undefined;
}

/** What rows that are alike come to at least, two by two, by prices of arcs. */
export function leastByPairs(
  { alike, set }: RowSpace,
  sorts: readonly RowSort[],
  costsOf: (sort: RowSort) => Float64Array,
): number | undefined {
  if (alike === undefined || sorts.length < 2) return undefined;
  const single = (sort: RowSort): number => leastBeyond(alike, costsOf(sort))[0];
  const known = new Map<string, number>();
  const pair = (row: number): number => {
    const [a, b] = [sorts[row], sorts[row + 1]];
    const key = `${sorts.indexOf(a)} ${sorts.indexOf(b)}`;
    const sum = known.get(key) ?? lightestPair(alike, set.conflicts[0], costsOf(a), costsOf(b))?.cost ?? Infinity;
    known.set(key, sum);
    return sum;
  };
  const from = (start: number): number => {
    let sum = start === 1 ? single(sorts[0]) : 0;
    let row = start;
    for (; row + 1 < sorts.length; row += 2) sum += pair(row);
    return row < sorts.length ? sum + single(sorts[row]) : sum;
  };
  return Math.max(from(0), from(1));
}
