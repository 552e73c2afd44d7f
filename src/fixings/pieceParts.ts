import type { Piece } from '../boards/boardLayout.js';
import type { LocatedZone } from '../joists/locateZones.js';
import { toGrid } from '../survey/grid.js';
import { isWithin } from '../survey/isWithin.js';
import { corners } from '../survey/outline.js';

/** A part of the ceiling with the joists that its pieces are fixed to. */
export type FixedPart = Pick<LocatedZone, 'zone' | 'outline' | 'holes' | 'joists' | 'direction'>;

/** A piece with the part of the ceiling it is in: the one that has most of its corners, of two alike the first. */
export function pieceParts<P extends Pick<Piece, 'outline'>>(
  pieces: readonly P[],
  parts: readonly FixedPart[],
): { readonly piece: P; readonly part: FixedPart }[] {
  if (parts.length === 1) return pieces.map((piece) => ({ piece, part: parts[0] }));
  const rings = parts.map(({ outline, holes = [] }) => [outline, ...holes].map(corners));
  return pieces.map((piece) => {
    const points = piece.outline.map(({ x, y }) => ({ x: toGrid(x), y: toGrid(y) }));
    const counts = rings.map(
      (its) => points.filter((point) => its.filter((ring) => isWithin(ring, point)).length % 2 === 1).length,
    );
    return { piece, part: parts[counts.indexOf(Math.max(...counts))] };
  });
}
