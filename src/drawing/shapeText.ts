import type { Piece } from '../boards/boardLayout.js';
import { fromGrid } from '../survey/grid.js';
import { cutFigure } from './figure.js';
import { type Notch, pieceShape } from './pieceShape.js';
import type { Subject } from './subject.js';

/** What a piece is, if it is no rectangle and not only raked: its notches, or all its corners; nothing otherwise. */
export function shapeText(piece: Piece, zone: Subject): string {
  const { say, sides, unit } = zone;
  const { kind, corners, notches } = pieceShape(piece, zone);
  const figure = (steps: number): string => cutFigure(fromGrid(steps), unit);
  if (kind === 'rectangle' || kind === 'raked') return '';
  if (kind === 'notched') return notches.map((notch) => notchText(notch, zone)).join('; ');
  const list = corners.map(({ along, across }) => `${figure(along)} / ${figure(across)}`);
  return say('shape.corners', { near: sides.near, low: sides.low, list: list.join(', ') });
}

/** The place of a notch is written down like a cut, its size to the nearest. */
function notchText({ kind, end = 'near', edge = 'low', from, to }: Notch, { say, sides, length, unit }: Subject): string {
  const size = { along: length(fromGrid(to.along - from.along)), across: length(fromGrid(to.across - from.across)) };
  const place = (steps: number): string => cutFigure(fromGrid(steps), unit);
  if (kind === 'corner') return say('shape.corner', { ...size, end: sides[end], edge: sides[edge] });
  return kind === 'edge'
    ? say('shape.edge', { ...size, edge: sides[edge], from: place(from.along), near: sides.near })
    : say('shape.end', { ...size, end: sides[end], from: place(from.across), low: sides.low });
}
