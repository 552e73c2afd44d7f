import { toGrid } from '../survey/grid.js';
import type { Box } from './box.js';
import type { KeptPiece, Standing } from './standing.js';

/** Pieces and walls that are no further apart than this leave nothing to be boarded between them, grid steps. */
export const LEAST_LEFT = toGrid(20);
/** To the rounding of a place, grid steps. */
const HAIR = 2;

/** A piece may be laid, is up already, or may not be laid because of what is. */
export type AgainstStanding = 'free' | 'up' | 'blocked';

/**
 * What may become of a piece that fills this box. A piece that is up ends at a wall or where it makes a joint: `onJoist` says that
 * one of the ends would be a joint that is chosen.
 */
export function againstStanding({ up, kept }: Standing, box: Box, onJoist: boolean): AgainstStanding {
  const met = up.filter((piece) => isOver(piece, box));
  if (met.length > 0) return !onJoist && met.length === 1 && isAbout(met[0], box, LEAST_LEFT, LEAST_LEFT) ? 'up' : 'blocked';
  return kept.some((piece) => isOver(piece, box) && !isKept(piece, box)) ? 'blocked' : 'free';
}

const isOver = (a: Box, b: Box): boolean =>
  a.near < b.far - LEAST_LEFT && b.near < a.far - LEAST_LEFT && a.low < b.high - LEAST_LEFT && b.low < a.high - LEAST_LEFT;

function isAbout(a: Box, b: Box, nearEnd: number, farEnd: number): boolean {
  const isAcross = Math.abs(a.low - b.low) <= LEAST_LEFT && Math.abs(a.high - b.high) <= LEAST_LEFT;
  return isAcross && Math.abs(a.near - b.near) <= nearEnd && Math.abs(a.far - b.far) <= farEnd;
}

/** Whether a piece that fills this box is the one that is to stay. */
export const isKept = (piece: KeptPiece, box: Box): boolean =>
  isAbout(piece, box, ...(piece.meetsBoard.map((meets) => (meets ? HAIR : LEAST_LEFT)) as [number, number]));
