import { arePrices } from './arePrices.js';
import type { Proof } from './bestLayout.js';

/**
 * What proves a number of boards: for each division of the ceiling into rows a price for every kind of piece, such that no way to
 * cut a board is worth more than the board. Rows then come to no less than their lightest division, and boards to no less than
 * that over the price of one. Where prices are not enough, that a search of all ways to lay the rows found none with fewer.
 */
export interface Certificate {
  readonly kind: 'prices' | 'search';
  readonly divisions: readonly CertifiedRows[];
}

/** One division into rows. */
export interface CertifiedRows {
  /** From the first row on, mm; part by part. */
  readonly rowWidths: readonly number[];
  /** Whole numbers, one for each kind of piece that the rows can have, the widest and longest kind first. Absent where a search was needed. */
  readonly pieces?: readonly number[];
  /** Price of a board, per size, the longest first. */
  readonly boards?: readonly number[];
}

export function certificateOf(proofs: readonly Proof[]): Certificate {
  const divisions = proofs.map(({ space, prices }): CertifiedRows => {
    const rowWidths = space.set.layout.bands.map(({ width }) => width / 1000);
    if (prices === undefined || !arePrices(space, prices)) return { rowWidths };
    return { rowWidths, pieces: [...prices.kinds], boards: prices.boards };
  });
  return { kind: divisions.every(({ pieces }) => pieces !== undefined) ? 'prices' : 'search', divisions };
}
