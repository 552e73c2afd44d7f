import type { Piece } from '../boards/boardLayout.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Point } from '../survey/point.js';
import { risesOnSheet } from './boardSketch.js';
import { cutEdges, ticksAlong } from './boardsInk.js';
import { type EdgeFigure, levelFigures, uprightFigures } from './edgeFigures.js';
import { cutFigure } from './figure.js';
import { labelSvg } from './label.js';
import { LETTERS, shortened, textWidth } from './lettering.js';
import { WIDTH } from './lineTypes.js';
import { openingsOf, type PieceOpening } from './pieceOpenings.js';
import { pieceShape, type Spot, spotsOn } from './pieceShape.js';
import { sizeText } from './provisional.js';
import type { View } from './sheet.js';
import type { Subject } from './subject.js';
import { circle, line, type PaperPoint, polygon, strokes } from './svg.js';

/** What stands over, under and beside a piece on its sketch, mm on paper. */
export const PIECE_ROOM = { over: 20, under: 14, left: 6, right: 18 } as const;
const SMALL = LETTERS.small;
const FINE = { 'stroke-width': WIDTH.narrow } as const;

/** A piece to be sketched: the corner of its rectangle on the sheet, and the scale. */
export interface PiecePlace {
  readonly piece: Piece;
  readonly corner: PaperPoint;
  readonly scale: number;
  readonly view: View;
  /** How long its heading may be, mm. */
  readonly span: number;
}

/**
 * One piece that is no rectangle, lying as its board lies: every corner dimensioned along the piece from its left end, on the side
 * where the corner is, and across it at the right; walls named round it, ticks on its cut edges.
 */
export function pieceSketch(zone: Subject, { piece, corner, scale, view, span }: PiecePlace): string[] {
  const { say, sides } = zone;
  const shape = pieceShape(piece, zone);
  const [long, wide] = [fromGrid(shape.length) / scale, fromGrid(shape.width) / scale];
  const upward = risesOnSheet(zone, view);
  const spot = ({ along, across }: Spot): PaperPoint => ({
    x: corner.x + fromGrid(along) / scale,
    y: upward ? corner.y + wide - fromGrid(across) / scale : corner.y + fromGrid(across) / scale,
  });
  const toPiece = spotsOn(piece, zone.frame);
  const place = (point: Point): PaperPoint => spot(toPiece(point));
  const ring = shape.corners.map(spot);
  const ticks = cutEdges(piece, zone.frame).flatMap((edge) => ticksAlong(edge, { place, view }));
  const small = { height: SMALL, anchor: 'middle' } as const;
  const [above, below] = upward ? [sides.high, sides.low] : [sides.low, sides.high];
  const level = (wall: string, y: number): string =>
    labelSvg({ ...small, text: shortened(say('cutting.to', { wall }), long, SMALL), x: corner.x + long / 2, y });
  const standing = (wall: string, x: number): string =>
    labelSvg({ ...small, text: shortened(say('cutting.to', { wall }), wide, SMALL), x, y: corner.y + wide / 2, upright: true });
  const { long: length, wide: width } = sizeText(piece, zone);
  const heading = say('cutting.piece', { piece: piece.id, length, width, board: piece.board });
  const size = textWidth(heading, LETTERS.medium, true) <= span ? LETTERS.medium : SMALL;
  const openings = openingsOf(zone, piece);
  return [
    labelSvg({
      text: shortened(heading, span, size, true),
      x: corner.x,
      y: corner.y - 16,
      height: size,
      anchor: 'start',
      bold: true,
    }),
    level(above, corner.y - 2.6),
    level(below, corner.y + wide + 2.6),
    standing(sides.near, corner.x - 2.8),
    standing(sides.far, corner.x + long + 2.8),
    polygon(ring, { 'stroke-width': WIDTH.wide, fill: '#fff', 'data-piece': piece.id }),
    ...(ticks.length > 0 ? [strokes(ticks, FINE)] : []),
    ...openings.flatMap((each) => openingSvg(each, { spot, place, scale })),
    ...figures(zone, shape.corners, openings, { corner, long, wide, spot }),
  ];
}

interface OnSketch {
  readonly spot: (at: Spot) => PaperPoint;
  readonly place: (point: Point) => PaperPoint;
  readonly scale: number;
}

/** An opening in the midst of a piece, with its middle, its name and its size. */
function openingSvg({ name, size, across, along, opening }: PieceOpening, { spot, place, scale }: OnSketch): string[] {
  const centre = spot({ along: toGrid(across), across: toGrid(along) });
  const edge = { ...FINE, fill: '#fff' };
  const radius = 'diameter' in opening ? opening.diameter / 2 / scale : 0;
  const arm = radius + 1.2;
  return [
    'diameter' in opening ? circle(centre, radius, edge) : polygon(opening.outline.map(place), edge),
    line({ x: centre.x - arm, y: centre.y }, { x: centre.x + arm, y: centre.y }, FINE),
    line({ x: centre.x, y: centre.y - arm }, { x: centre.x, y: centre.y + arm }, FINE),
    labelSvg({ text: `${name} ${size}`, x: centre.x + arm + 0.6, y: centre.y - 2, height: SMALL, anchor: 'start', bold: true }),
  ];
}

interface Frame {
  readonly corner: PaperPoint;
  readonly long: number;
  readonly wide: number;
  readonly spot: (at: Spot) => PaperPoint;
}

/** Corners above the middle are dimensioned over the piece, those below it under the piece, and all across it at the right. */
function figures({ unit }: Subject, corners: readonly Spot[], openings: readonly PieceOpening[], frame: Frame): string[] {
  const { corner, long, wide, spot } = frame;
  const middle = corner.y + wide / 2;
  const marked = corners.map((at) => ({ at, paper: spot(at) }));
  const figure = (steps: number): string => cutFigure(fromGrid(steps), unit);
  const along = (over: boolean): EdgeFigure[] =>
    distinct([
      ...marked
        .filter(({ at, paper }) => paper.y < middle === over && at.along > 0)
        .map(({ at, paper }) => ({ at: paper.x, text: figure(at.along) })),
      ...openings.flatMap(({ name, across, along: up }) => {
        const paper = spot({ along: toGrid(across), across: toGrid(up) });
        return paper.y < middle === over ? [{ at: paper.x, text: `${name} ${cutFigure(across, unit)}` }] : [];
      }),
    ]);
  const across = distinct([
    ...marked.map(({ at, paper }) => ({ at: paper.y, text: figure(at.across) })),
    ...openings.map(({ name, across: out, along: up }) => {
      const paper = spot({ along: toGrid(out), across: toGrid(up) });
      return { at: paper.y, text: `${name} ${cutFigure(up, unit)}` };
    }),
  ]);
  return [
    ...levelFigures(along(true), corner.y, -1),
    ...levelFigures(along(false), corner.y + wide, 1),
    ...uprightFigures(across, corner.x + long),
  ];
}

function distinct(marks: readonly EdgeFigure[]): EdgeFigure[] {
  const seen = new Map<string, EdgeFigure>();
  for (const mark of marks) seen.set(`${Math.round(mark.at * 1000)} ${mark.text}`, mark);
  return [...seen.values()].sort((a, b) => a.at - b.at);
}
