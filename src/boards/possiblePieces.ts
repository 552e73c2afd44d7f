import type { Ring } from './overlayRings.js';
import type { PlacementProblem } from './placementProblem.js';
import type { Band } from './rowLayouts.js';

/** A stretch of a row from wall or opening to wall or opening, and where it may be divided. */
export interface Run {
  /** The two ends of the run and, between them, the joist centres on which it may be divided; in order. */
  readonly places: readonly Place[];
  /** Its rings, where it does not simply fill the row from a square end to a square end. */
  readonly rings?: readonly Ring[];
  readonly pieces: readonly PossiblePiece[];
  /**
   * For each place, what may lie between it and another: pieces, by their index; several where a wall or an opening parts them.
   * The shortest first.
   */
  readonly starting: readonly (readonly (readonly number[])[])[];
}

/** Where a run ends or may be divided: in the middle of the row, and at its two edges where a joint would be raked. */
export interface Place {
  readonly at: number;
  readonly low: number;
  readonly high: number;
  /** Which of the problem's joists it is on; -1 at the ends of the run. */
  readonly joist: number;
}

export type Meets = 'board' | 'wall' | 'opening';

/** A piece from one place of a run to another that the rules allow and some board can give. */
export interface PossiblePiece {
  readonly from: number;
  readonly to: number;
  readonly lowMeets: Meets;
  readonly highMeets: Meets;
  /** Length of its longer side. */
  readonly nominal: number;
  /** As cut, if its board is long enough; with the rake of its ends. */
  readonly cut: number;
  /** How much shorter than `cut` it may be left, on both ends together. */
  readonly give: number;
  /** What it needs of the width of a board, where that is less than its row. */
  readonly width?: number;
  /** Its extent, nominal, where it does not simply fill the row. */
  readonly box?: Box;
}

/** A rectangle in grid steps. */
export interface Box {
  readonly near: number;
  readonly far: number;
  readonly low: number;
  readonly high: number;
}

/** What a piece of a row needs of the width of a board. */
export const widthOn = (piece: PossiblePiece | undefined, rowWidth: number): number => piece?.width ?? rowWidth;

/**
 * Whether a piece is long enough, has timber enough, and some board is long enough. A piece that fills its run by itself cannot be
 * longer, nor lie on more joists: it needs one.
 */
export function isPossible({ rules, stocks }: PlacementProblem, band: Band, piece: PossiblePiece, supports: number): boolean {
  const fills = piece.lowMeets !== 'board' && piece.highMeets !== 'board';
  if (supports < (fills ? Math.min(1, rules.pieceSupports) : rules.pieceSupports)) return false;
  if (!fills && piece.nominal < rules.pieceLength) return false;
  const width = widthOn(piece, band.width);
  return stocks.some((stock) => stock.width >= width && fitsLength({ rules }, stock.length, piece));
}

/** Whether a board of this length can be the piece: cut from it, or used uncut and a little short. */
export const fitsLength = ({ rules }: Pick<PlacementProblem, 'rules'>, length: number, piece: PossiblePiece): boolean =>
  piece.cut <= length || (piece.cut - length <= piece.give && piece.nominal - length <= rules.greatestExcess);
