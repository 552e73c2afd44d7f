import type { AnyRows, WeighedLine } from './anyRows.js';
import type { Edges } from './box.js';
import type { Slab } from './crossSections.js';
import type { SlabRange } from './lineAcross.js';
import type { Band, RowFamily } from './rowLayouts.js';

/** Divisions of a part into rows that differ in the width of the first row, from one width to another. */
export interface RowRange {
  readonly part: number;
  readonly family: RowFamily;
  readonly from: number;
  readonly to: number;
}

/** A row of such divisions, as it is in the first and in the last of them. */
export interface RangedRow {
  readonly part: number;
  /** Which row of its part it is. */
  readonly row: number;
  readonly first: Band;
  readonly last: Edges;
  /** What any of them has of the part at the least. */
  readonly line: WeighedLine;
  /** Per height of the line: how much of its slabs is in the row at the least. */
  readonly heights: readonly number[];
}

/** The rows of all divisions in some ranges, without those that hold no slab in all of them. */
export const rangedRows = (any: AnyRows, ranges: readonly RowRange[]): RangedRow[] =>
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
      return [{ part, row, first, last, line, heights }];
    });
  });

/** The slabs of which a row has part. */
function touched(slabs: readonly Slab[], row: Edges): SlabRange {
  const touching = [...slabs.keys()].filter((at) => slabs[at].low < row.high && slabs[at].high > row.low);
  return { first: touching[0] ?? 0, last: touching[touching.length - 1] ?? -1 };
}

const heightOf = (slabs: readonly Slab[], { first, last }: SlabRange, { low, high }: Edges): number =>
  Math.min(high, slabs[last].high) - Math.max(low, slabs[first].low);
