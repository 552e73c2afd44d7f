import type { Board } from '../boards/boardLayout.js';
import { pieceShape } from './pieceShape.js';
import { type Subject, zoneOf } from './subject.js';

/** Whether a board goes up as it came: neither cut to length or width, nor its piece cut round anything. */
export function isWhole(subject: Subject, { id, cuts }: Board): boolean {
  const pieces = subject.plan.layout.pieces.filter(({ board }) => board === id);
  return cuts.length === 0 && pieces.every((piece) => pieceShape(piece, zoneOf(subject, piece)).kind === 'rectangle');
}
