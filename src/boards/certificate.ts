/**
 * What proves a number of boards: for each division of the ceiling into rows a price for every kind of piece, such that no way to
 * cut a board is worth more than the board. Rows then come to no less than their lightest division, and boards to no less than
 * that over the price of one. Where prices are not enough, that a search of all ways to lay the rows found none with fewer, or that
 * what the rows of all divisions have in common asks for as many.
 */
export interface Certificate {
  readonly kind: 'prices' | 'search';
  readonly divisions: readonly CertifiedRows[];
}

/** One division into rows. */
export interface CertifiedRows {
  /** From the first row on, mm; part by part. */
  readonly rowWidths: readonly number[];
  /** Whole numbers, one for each kind of piece that the rows can have, the widest and longest kind first. Absent where they do not ask for enough. */
  readonly pieces?: readonly number[];
  /** Price of a board, per size, the longest first. */
  readonly boards?: readonly number[];
}
