import type { Piece } from '../boards/boardLayout.js';
import type { LocatedZone } from '../joists/locateZones.js';
import { toGrid } from '../survey/grid.js';
import { isWithin } from '../survey/isWithin.js';
import { corners, extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';

/** A part of the ceiling with the joists that its pieces are fixed to. */
export type FixedPart = Pick<LocatedZone, 'zone' | 'outline' | 'holes' | 'joists' | 'direction'>;

/** Corners are looked at so far inside a piece, grid steps: a piece may end on the border of two parts. */
const INSIDE = 1000;

/** A piece with the part of the ceiling it is in: the one that has most of its corners, of two alike the first. */
export function pieceParts<P extends Pick<Piece, 'outline'>>(
  pieces: readonly P[],
  parts: readonly FixedPart[],
): { readonly piece: P; readonly part: FixedPart }[] {
  if (parts.length === 1) return pieces.map((piece) => ({ piece, part: parts[0] }));
  const rings = parts.map(({ outline, holes = [] }) => [outline, ...holes].map(corners));
  return pieces.map((piece) => {
    const points = cornersInside(piece.outline);
    const counts = rings.map(
      (its) => points.filter((point) => its.filter((ring) => isWithin(ring, point)).length % 2 === 1).length,
    );
    return { piece, part: parts[counts.indexOf(Math.max(...counts))] };
  });
}

/** The corners of an outline, each a hair nearer to its middle. */
function cornersInside(outline: readonly Point[]): Point[] {
  const points = outline.map(({ x, y }) => ({ x: toGrid(x), y: toGrid(y) }));
  const { left, right, low, high } = extentOf(points);
  const towards = (at: number, from: number, to: number): number => at + INSIDE * Math.sign(from + to - 2 * at);
  return points.map(({ x, y }) => ({ x: towards(x, left, right), y: towards(y, low, high) }));
}
