import type { Piece } from '../boards/boardLayout.js';
import { isWithin } from '../survey/isWithin.js';
import { type Extent, extentOf } from '../survey/outline.js';
import type { Opening } from '../survey/room.js';
import { pieceShape } from './pieceShape.js';
import type { Subject } from './subject.js';

/** An opening that a piece has to be cut for. */
export interface PieceOpening {
  readonly name: string;
  readonly size: string;
  /** From the piece's near end and its low edge to the middle of the opening, mm. */
  readonly across: number;
  readonly along: number;
  readonly opening: Opening;
}

/** The extent of an opening, mm on the plan. */
export function openingExtent(opening: Opening): Extent {
  if (!('diameter' in opening)) return extentOf(opening.outline);
  const { centre, diameter } = opening;
  return {
    left: centre.x - diameter / 2,
    right: centre.x + diameter / 2,
    low: centre.y - diameter / 2,
    high: centre.y + diameter / 2,
  };
}

export const openingName = ({ say }: Subject, opening: Opening, index: number): string =>
  opening.id ?? `${say(`opening.${opening.kind}`)} ${index + 1}`;

export function openingSize({ length }: Subject, opening: Opening): string {
  if ('diameter' in opening) return `Ø${length(opening.diameter)}`;
  const { left, right, low, high } = extentOf(opening.outline);
  return `${length(right - left)} × ${length(high - low)}`;
}

/** The openings whose extent reaches into a piece's; where the piece is cut round them already, only those in the midst of it. */
export function openingsOf(subject: Subject, piece: Piece): PieceOpening[] {
  const own = extentOf(piece.outline);
  const isRectangle = pieceShape(piece, subject).kind === 'rectangle';
  return (subject.plan.room.openings ?? []).flatMap((opening, index) => {
    const { left, right, low, high } = openingExtent(opening);
    if (left >= own.right || right <= own.left || low >= own.high || high <= own.low) return [];
    const centre = { x: (left + right) / 2, y: (low + high) / 2 };
    if (!isRectangle && !isWithin(piece.outline, centre)) return [];
    const { u, v } = subject.frame.into({ x: centre.x - own.left, y: centre.y - own.low });
    return [
      {
        name: openingName(subject, opening, index),
        size: openingSize(subject, opening),
        across: u,
        along: v,
        opening,
      },
    ];
  });
}
