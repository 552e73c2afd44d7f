import type { Family } from './families.js';

/**
 * Where one reading is taken to lie: on the joist with this number, and by how many of its widths the reading is off the
 * joist's middle (an edge by a half; the timbers of a doubled joist by a half, its edges by a whole). `null`: on none.
 */
export type Place = { readonly joist: number; readonly off: number } | null;

/** A way of reading the marks: one family, and a place for each reading in the order of the sight. */
export interface Placing {
  readonly family: Family;
  readonly places: readonly Place[];
  /** Joists that are taken to be two side by side. */
  readonly doubled: readonly number[];
}
