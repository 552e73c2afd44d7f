import type { PossiblePiece } from './possiblePieces.js';
import type { RowLayout } from './rowLayouts.js';
import type { PlacedRow } from './rowSets.js';
import type { Stock } from './stocksOf.js';

/** A whole layout in the problem's coordinates. */
export interface Laid {
  readonly layout: RowLayout;
  readonly rows: readonly PlacedRow[];
  readonly divisions: readonly Division[];
  readonly wanted: readonly WantedPiece[];
  readonly boards: readonly PackedBoard[];
  readonly measures: Measures;
}

/** How a row is divided. */
export interface Division {
  /** Per run, indices into its pieces. */
  readonly pieces: readonly (readonly number[])[];
  /** Positions of the butt joints, and which joists they are on. */
  readonly joints: readonly number[];
  readonly joists: readonly number[];
}

/** A piece to be cut: its length, and the width that it needs of a board. */
export interface WantedPiece {
  readonly piece: PossiblePiece;
  readonly width: number;
  /** As cut, and whether what is ripped off is so at its low edge: it lies at the high edge of its row only, or the row is ripped there. */
  readonly cutWidth: number;
  readonly atHigh: boolean;
  /** Index of its row. */
  readonly row: number;
  /** Whether what is ripped off its row is so at the low edge: the first of several rows. */
  readonly rippedLow: boolean;
  /** Whether its ends are butt joints. */
  readonly lowJoint: boolean;
  readonly highJoint: boolean;
}

/** How one board is used; as what was found for kinds of pieces, with pieces told by their index among the wanted. */
export interface PackedBoard {
  readonly stock: Stock;
  readonly whole: readonly number[];
  readonly strips: readonly { readonly width: number; readonly pieces: readonly number[] }[];
}

/** What layouts are compared by. Smaller is better throughout. */
export interface Measures {
  readonly boards: number;
  /** In the caller's currency times 1000, whole. */
  readonly cost: number;
  /** Square mm. */
  readonly area: number;
  readonly joints: number;
  readonly shortPieces: number;
  readonly cuts: number;
  /** Neighbouring butt joints closer than preferred. */
  readonly closeJoints: number;
  readonly unprovenEnds: number;
  /** Butt joints whose bearing is not secure. */
  readonly poorBearings: number;
  readonly narrowRows: number;
  readonly heavyPieces: number;
  readonly lengths: number;
  readonly stockSizes: number;
  readonly rippedRows: number;
}
