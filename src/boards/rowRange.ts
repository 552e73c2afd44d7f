import type { AnyRows, WeighedLine } from './anyRows.js';
import type { Edges } from './box.js';
import type { Slab } from './crossSections.js';
import type { SlabRange } from './lineAcross.js';
import { type Band, type RowFamily, rowFamilies } from './rowLayouts.js';

/** Divisions of a part into rows that differ in the width of the first row, from one width to another. */
export interface RowRange {
  readonly part: number;
  readonly family: RowFamily;
  readonly from: number;
  readonly to: number;
}

/** One for each part. */
export type Ranges = readonly RowRange[];

/** All divisions, or those that are not searched; nothing where there are more than so many kinds of them. */
export function allRanges({ problem }: AnyRows, which: 'all' | 'not searched', most: number): Ranges[] | undefined {
  let all: Ranges[] = [[]];
  for (const part of problem.parts.keys()) {
    // In one part each division that stands alone is searched.
    const isOpen = which === 'all' || problem.parts.length > 1;
    const families = rowFamilies(problem, part).filter(({ from, to }) => isOpen || to > from);
    all = all.flatMap((ranges) => families.map((family) => [...ranges, { part, family, from: family.from, to: family.to }]));
    if (all.length > most) return undefined;
  }
  return all;
}

/** A range no wider than this is not halved, grid steps. */
const NARROWEST = 1000;

/** The widest of some ranges. */
export const widestOf = (ranges: Ranges): RowRange => ranges.reduce((a, b) => (b.to - b.from > a.to - a.from ? b : a));

/** The same with one of them narrower. */
export const withRange = (ranges: Ranges, range: RowRange, from: number, to: number): Ranges =>
  ranges.map((each) => (each === range ? { ...range, from, to } : each));

/** The lower and the upper half of the widest range; nothing where that is narrow. */
export function halved(ranges: Ranges): Ranges[] | undefined {
  const widest = widestOf(ranges);
  const { from, to } = widest;
  if (to - from <= NARROWEST) return undefined;
  const middle = Math.floor((from + to) / 2);
  return [withRange(ranges, widest, from, middle), withRange(ranges, widest, middle + 1, to)];
}

/** A row of such divisions, as it is in the first and in the last of them. */
export interface RangedRow {
  readonly part: number;
  /** Which row of its part it is. */
  readonly row: number;
  readonly first: Band;
  readonly last: Edges;
  /** The slabs that it has part of, where that is the same in all of them. */
  readonly slabs: SlabRange | undefined;
  /** What any of them has of the part at the least. */
  readonly line: WeighedLine;
  /** Per height of the line: how much of its slabs is in the row at the least; 0 where that is not asked for. */
  readonly heights: readonly number[];
}

/** The rows of all divisions in some ranges, without those that hold no slab in all of them. */
export const rangedRows = (any: AnyRows, ranges: Ranges): RangedRow[] =>
  ranges.flatMap(({ part, family, from, to }) => {
    const slabs = any.slabs(part, family.gap);
    const ends = family.bands(to);
    return family.bands(from).flatMap((first, row): RangedRow[] => {
      const last = ends[row];
      const [a, b] = [touched(slabs, first), touched(slabs, last)];
      const held = { first: Math.max(a.first, b.first), last: Math.min(a.last, b.last) };
      if (held.first > held.last) return [];
      const possible = { first: Math.min(a.first, b.first), last: Math.max(a.last, b.last) };
      const line = any.line(part, family.gap, held, possible);
      // Between the two ends of the range it is never less than at both.
      const heights = line.heights.map((of) => Math.min(heightOf(slabs, of, first), heightOf(slabs, of, last)));
      const isSame = a.first === b.first && a.last === b.last;
      return [{ part, row, first, last, slabs: isSame ? held : undefined, line, heights }];
    });
  });

/**
 * The first width after which rows of a range begin or cease to have part of a slab: of all such the one nearest to its middle.
 */
export function nextTurn(any: AnyRows, { part, family, from, to }: RowRange): number | undefined {
  const levels = any.slabs(part, family.gap).flatMap(({ low, high }) => [low, high]);
  const then = family.bands(to);
  const middle = (from + to) / 2;
  let nearest: number | undefined;
  for (const [row, { low, high }] of family.bands(from).entries()) {
    for (const level of levels) {
      // At the level itself a row has part of what is beside it no longer, or not yet.
      for (const [edge, moves, last] of [
        [low, then[row].low > low, 1],
        [high, then[row].high > high, 0],
      ] as const) {
        const at = from + level - edge - last;
        if (!moves || at < from || at >= to) continue;
        if (nearest === undefined || Math.abs(at - middle) < Math.abs(nearest - middle)) nearest = at;
      }
    }
  }
  return nearest;
}

/** The slabs of which a row has part. */
function touched(slabs: readonly Slab[], row: Edges): SlabRange {
  const touching = [...slabs.keys()].filter((at) => slabs[at].low < row.high && slabs[at].high > row.low);
  return { first: touching[0] ?? 0, last: touching[touching.length - 1] ?? -1 };
}

/** How much of some slabs is in a row. */
export const heightOf = (slabs: readonly Slab[], { first, last }: SlabRange, { low, high }: Edges): number =>
  Math.min(high, slabs[last].high) - Math.max(low, slabs[first].low);
