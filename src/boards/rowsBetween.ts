import type { AnyRows } from './anyRows.js';
import { askedByProgram } from './askedByProgram.js';
import { askedByWeights } from './askedByWeights.js';
import type { Steps } from './packKinds.js';
import { isCounted, lastAlike, richestStretches } from './richestStretches.js';
import type { RowLayout } from './rowLayouts.js';
import {
  allRanges,
  halved,
  nextTurn,
  type RangedRow,
  type Ranges,
  type RowRange,
  rangedRows,
  widestOf,
  withRange,
} from './rowRange.js';
import { sliversIn } from './sliversIn.js';

/** Ranges of divisions that are looked at, and programmes that are solved for narrow ones, grid steps. */
const MOST_RANGES = 1200;
const MOST_PROGRAMS = 300;
const NARROW = 150_000;
/** Divisions that are told of, at the most. */
const MOST_LEFT = 60;
/** Steps of one search in a range, and in a single division. */
const SEARCHES = { ofRange: 3000, ofOne: 150_000 };

/** Divisions of which programmes do not tell that they take so many boards, and whether of all that are like none of these they do. */
export function rowsLeft(
  any: AnyRows,
  boards: number,
  steps: Steps,
): { readonly rows: readonly RowLayout[]; readonly isAll: boolean } {
  const left = new Map<string, RowLayout>();
  const isAll = walk(any, programs(any, boards, steps, { ofRange: 0, ofOne: 0 }), (rows) => {
    left.set(nameOf(rows), rows);
    return left.size < MOST_LEFT && steps.left > 0;
  });
  return { rows: [...left.values()], isAll };
}

/** Whether every layout on rows that are not searched takes so many boards; of single divisions that may be known. */
export const isAskedBeside = (any: AnyRows, boards: number, steps: Steps, isSettled: (rows: RowLayout) => boolean): boolean =>
  walk(any, programs(any, boards, steps, SEARCHES), (rows, isAll) => isAll && isSettled(rows));

/** What tells one division into rows from another. */
export const nameOf = ({ gap, bands }: RowLayout): string =>
  `${gap} ${bands.map(({ part, low, high }) => `${part}:${low}-${high}`).join(' ')}`;

type IsAsked = (rows: readonly RangedRow[], width: number) => boolean;

/** Whether weights, a programme or a search of so many steps tell that rows take so many boards. */
function programs(any: AnyRows, boards: number, steps: Steps, { ofRange, ofOne }: typeof SEARCHES): IsAsked {
  let solved = 0;
  return (rows, width) => {
    if (askedByWeights(any, rows, boards)) return true;
    if (width > NARROW || steps.left <= 0 || solved++ >= MOST_PROGRAMS) return false;
    return askedByProgram(any.problem, rows, boards, steps, width > 0 ? ofRange : ofOne);
  };
}

/**
 * Goes through all divisions that are not searched, range by range. `mayGoOn` is asked about divisions of which nothing tells that they
 * take so many boards; `isAll`: and of no others that are like them. Whether it came to the end.
 */
function walk(any: AnyRows, isAsked: IsAsked, mayGoOn: (rows: RowLayout, isAll: boolean) => boolean): boolean {
  const open = allRanges(any, 'not searched', MOST_RANGES);
  if (open === undefined) return false;
  for (let looked = 0; open.length > 0; looked++) {
    if (looked > MOST_RANGES) return false;
    const ranges = open.pop() as Ranges;
    if (needsNoLook(any, ranges, isAsked)) continue;
    const { from, to } = widestOf(ranges);
    const { parts = [], rich = [] } = dividedUp(any, ranges);
    if (parts.length + rich.length === 0 && !mayGoOn(layoutOf(ranges), false)) return false;
    open.push(...parts);
    for (const each of rich) {
      const one = searchedIn(any, each) ?? withWidth(each, roundest(widestOf(each)));
      if (!isAsked(rangedRows(any, one).map(withoutThin), 0) && !mayGoOn(layoutOf(one), from === to)) return false;
    }
  }
  return true;
}

/** Whether all divisions of ranges leave more slivers than others do, or, where they are more than one, take so many boards for certain. */
function needsNoLook(any: AnyRows, ranges: Ranges, isAsked: IsAsked): boolean {
  const rows = rangedRows(any, ranges);
  if (rows.reduce((sum, row) => sum + sliversIn(any, row), 0) > any.slivers) return true;
  const { from, to } = widestOf(ranges);
  return to > from && isAsked(rows, to - from);
}

/**
 * Ranges in parts, each to be looked at by itself; or divisions among them on which all can be cut that can be cut on any of them. Nothing
 * where neither can be told.
 */
function dividedUp(any: AnyRows, ranges: Ranges): { parts?: readonly Ranges[] | undefined; rich?: readonly Ranges[] } {
  const [range, ...others] = ranges.filter(({ from, to }) => to > from);
  if (range === undefined) return { rich: [ranges] };
  if (others.length > 0) return { parts: halved(ranges) };
  const { from, to } = range;
  const [before, after] = [from, to].map((first) => rangedRows(any, withWidth(ranges, first)));
  const at = nextTurn(any, range) ?? lastAlike(before, after, from);
  if (at !== undefined) return { parts: [withRange(ranges, range, from, at), withRange(ranges, range, at + 1, to)] };
  const stretches = richestStretches(any.problem, before, after, to - from);
  if (stretches === undefined) return { parts: halved(ranges) };
  return { rich: stretches.map((stretch) => withRange(ranges, range, from + stretch.from, from + stretch.to)) };
}

/** A division among these that is searched. */
function searchedIn(any: AnyRows, ranges: Ranges): Ranges | undefined {
  const { from, to } = widestOf(ranges);
  if (ranges.length > 1) return undefined;
  for (const rows of any.searched) {
    const { width } = rows.bands[0];
    const one = withWidth(ranges, width);
    if (width >= from && width <= to && nameOf(layoutOf(one)) === nameOf(rows)) return one;
  }
  return undefined;
}

/** A width in whole mm, where there is one. */
function roundest({ from, to }: RowRange): number {
  const whole = Math.ceil(from / 1000) * 1000;
  return whole <= to ? whole : from;
}

const withWidth = (ranges: Ranges, first: number): Ranges => withRange(ranges, widestOf(ranges), first, first);

/** A row of which strips are not asked for that do not count. */
const withoutThin = (row: RangedRow): RangedRow => ({
  ...row,
  heights: row.heights.map((height) => (isCounted(height) ? height : 0)),
});

const layoutOf = (ranges: Ranges): RowLayout => ({
  gap: ranges[0].family.gap,
  bands: ranges.flatMap(({ family, from }) => family.bands(from)),
});
