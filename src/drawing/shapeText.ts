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

function notchText({ kind, end = 'near', edge = 'low', from, to }: Notch, { say, sides, length }: Subject): string {
  const figure = (steps: number): string => length(fromGrid(steps));
  const size = { along: figure(to.along - from.along), across: figure(to.across - from.across) };
  if (kind === 'corner') return say('shape.corner', { ...size, end: sides[end], edge: sides[edge] });
  return kind === 'edge'
    ? say('shape.edge', { ...size, edge: sides[edge], from: figure(from.along), near: sides.near })
    : say('shape.end', { ...size, end: sides[end], from: figure(from.across), low: sides.low });
}
