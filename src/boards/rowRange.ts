import type { Edges } from './box.js';
import type { Band, RowFamily } from './rowLayouts.js';
import { type AnyRows, heightOf, type Stretch } from './stretchesOfParts.js';

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
  readonly first: Band;
  readonly last: Edges;
  /** What a division in between has of each stretch at the least: between the two it is never less than in both. */
  readonly held: readonly { readonly from: number; readonly stretch: Stretch; readonly height: number }[];
}

export const rangedRows = (any: AnyRows, ranges: readonly RowRange[]): RangedRow[] =>
  ranges.flatMap(({ part, family, from, to }) => {
    const last = family.bands(to);
    const stretches = any.stretches(part, family.gap);
    return family.bands(from).map((band, row): RangedRow => {
      const held = stretches.flatMap((found, start) =>
        found
          .map((stretch) => ({ from: start, stretch, height: Math.min(heightOf(band, stretch), heightOf(last[row], stretch)) }))
          .filter(({ height }) => height > 0),
      );
      return { part, first: band, last: last[row], held };
    });
  });
