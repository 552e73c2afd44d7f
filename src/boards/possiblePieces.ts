import type { Box, Edges } from './box.js';
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
  /** Pieces with a neck are not among them: it is divided there. */
  readonly isParted?: true;
}

/** Where a run ends or may be divided: in the middle of the row, and at its two edges where a joint would be raked. */
export interface Place {
  readonly at: number;
  readonly low: number;
  readonly high: number;
  /** Which of the problem's joists it is on; -1 at the ends of the run, and where nobody chooses. */
  readonly joist: number;
  /** Where a piece that is up ends. */
  readonly standing?: StandingJoint;
}

/** Of a butt joint that a piece which is up makes, whatever lies beside it. */
export interface StandingJoint {
  /** Which of the problem's joists it is over; -1 for none. */
  readonly joist: number;
  /** How far the piece that is up keeps from its half of the gap: on the low side of the joint, and on its high side. */
  readonly below: number;
  readonly above: number;
}

export type { Box, Edges };

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
  /** It is up already, and takes no board. */
  readonly isUp?: true;
}

/** The extent of a piece of a run, nominal. */
export const boxIn = (
  { places }: Pick<Run, 'places'>,
  { low, high }: Edges,
  { from, to, box }: Pick<PossiblePiece, 'from' | 'to' | 'box'>,
): Box => box ?? { near: places[from].at, far: places[to].at, low, high };

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
export const fitsLength = (
  { rules }: Pick<PlacementProblem, 'rules'>,
  length: number,
  piece: Pick<PossiblePiece, 'cut' | 'give' | 'nominal'>,
): boolean => piece.cut <= length || (piece.cut - length <= piece.give && piece.nominal - length <= rules.greatestExcess);
