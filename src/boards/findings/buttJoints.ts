import type { PieceUp } from './laidCeiling.js';

/** The pieces that meet at each butt joint, the one on its low side first. Pieces come in the order of the plan. */
export function buttJoints(pieces: readonly PieceUp[]): (readonly [before: PieceUp, after: PieceUp])[] {
  return pieces.slice(1).flatMap((after, i) => {
    const before = pieces[i];
    const meet = before.piece.ends[1].meets === 'board' && after.piece.ends[0].meets === 'board';
    return meet && before.piece.row === after.piece.row ? [[before, after] as const] : [];
  });
}
