import type { Piece } from '../boards/boardLayout.js';
import type { CeilingPlan } from '../plan/ceilingPlan.js';
import type { Subject } from './subject.js';

/** The pieces that are not up yet: what there is left to cut and to fix. */
export const stillToFix = ({ layout }: Pick<CeilingPlan, 'layout'>): Piece[] => layout.pieces.filter((piece) => !isUp(piece));

export const isUp = ({ locked }: Pick<Piece, 'locked'>): boolean => locked === true;

/** Which pieces a table leaves out because they are up. */
export function upText({ plan, say }: Subject): string[] {
  const up = plan.layout.pieces.filter(isUp).map(({ id }) => id);
  return up.length === 0 ? [] : [say('table.up', { list: up.join(', ') })];
}

/** What a piece is cut from, or that it is up. */
export const boardOrUp = (piece: Piece, { say }: Pick<Subject, 'say'>): string => (isUp(piece) ? say('piece.up') : piece.board);
