import type { Board, Piece } from '../boards/boardLayout.js';
import type { BoardStock } from '../survey/boardStock.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { levelFigures, uprightFigures } from './edgeFigures.js';
import { cutFigure } from './figure.js';
import { hatch } from './hatch.js';
import { heartOf } from './heartOf.js';
import { type Box, boxOf, grown, type Label, labelSvg, overlap, within } from './label.js';
import { LETTERS, shortened } from './lettering.js';
import { WIDTH } from './lineTypes.js';
import { pieceShape } from './pieceShape.js';
import { ABOUT, proveBefore, sizeText } from './provisional.js';
import { segmentBoxes } from './segmentBoxes.js';
import type { View } from './sheet.js';
import { isUp } from './stillToFix.js';
import { type Subject, zoneOf } from './subject.js';
import { line, type PaperPoint, polygon, rect, strokes } from './svg.js';

/** Heights of what stands over and under a board on a cutting sheet, mm. */
export const OVER = 11;
export const UNDER = 14;
/** What stands at the left and at the right of a board, mm. */
export const LEFT = 6;
export const RIGHT = 17;
const SMALL = LETTERS.small;
const FINE = { 'stroke-width': WIDTH.narrow } as const;

/** A board to be sketched, its corner on the sheet, and the scale. */
export interface Sketch {
  readonly board: Board;
  readonly stock: BoardStock;
  readonly corner: PaperPoint;
  readonly scale: number;
  readonly view: View;
}

/**
 * One board as it is cut: along it always to the right, so that a tape runs from the left end; across it up or down, whichever
 * makes it the side that is looked at. Walls are named round it, offcuts hatched, cuts dimensioned from the left and the low edge.
 */
export function boardSketch(subject: Subject, sketch: Sketch): string[] {
  const { plan, say } = subject;
  const { board, stock, corner, scale } = sketch;
  const [long, wide] = [stock.length / scale, stock.width / scale];
  const pieces = plan.layout.pieces.filter((piece) => piece.board === board.id);
  const zones = [...new Set(pieces.map((piece) => zoneOf(subject, piece)))];
  const upward = risesOnSheet(zones[0] ?? subject, sketch.view);
  const own = { left: corner.x, right: corner.x + long, top: corner.y, bottom: corner.y + wide };
  const place = ({ along, across, length, width }: Part): Box => {
    const [near, far] = [across / scale, (across + width) / scale];
    const [top, bottom] = upward ? [own.bottom - far, own.bottom - near] : [own.top + near, own.top + far];
    return { left: own.left + along / scale, right: own.left + (along + length) / scale, top, bottom };
  };
  const waste = board.offcuts.map(({ at, length, width }) => ({ ...at, length, width }));
  const to = (wall: string): string => say('cutting.to', { wall });
  const level = (text: string, y: number): string =>
    labelSvg({ text: shortened(to(text), long, SMALL), x: own.left + long / 2, y, height: SMALL, anchor: 'middle' });
  const standing = (text: string, x: number): string =>
    labelSvg({
      text: shortened(to(text), wide, SMALL),
      x,
      y: own.top + wide / 2,
      height: SMALL,
      anchor: 'middle',
      upright: true,
    });
  // Pieces of one board that go to different zones face different walls: each has its own in the cut list.
  const { sides } = zones[0] ?? subject;
  const [above, below] = upward ? [sides.high, sides.low] : [sides.low, sides.high];
  const walls =
    zones.length > 1
      ? []
      : [
          level(above, own.top - 2.6),
          level(below, own.bottom + 2.6),
          standing(sides.near, own.left - 2.8),
          standing(sides.far, own.right + 2.8),
        ];
  const heading = shortened(
    say(board.opened ? 'cutting.boardOpened' : 'cutting.board', { board: board.id, stock: stock.id }),
    long + RIGHT,
    LETTERS.medium,
    true,
  );
  return [
    labelSvg({ text: heading, x: own.left, y: own.top - 8, height: LETTERS.medium, anchor: 'start', bold: true }),
    ...walls,
    rect(own.left, own.top, long, wide, { 'stroke-width': WIDTH.wide, fill: '#fff' }),
    ...waste.flatMap((part) =>
      offcutSvg(place(part), `${cutFigure(part.length, subject.unit)} × ${cutFigure(part.width, subject.unit)}`),
    ),
    ...board.cuts.map(({ kind, at, from, to: end }) => {
      const cut =
        kind === 'cross'
          ? { along: at, across: from, length: 0, width: end - from }
          : { along: from, across: at, length: end - from, width: 0 };
      const { left, right, top, bottom } = place(cut);
      return line({ x: left, y: top }, { x: right, y: bottom }, { 'stroke-width': WIDTH.wide });
    }),
    ...pieces.flatMap((piece) => pieceParts(piece, { subject, place, upward, view: sketch.view })),
    ...alongFigures(subject, sketch, pieces, own),
    ...acrossFigures(subject, sketch, own, upward),
  ];
}

/** A part of a board, mm on the board. */
interface Part {
  readonly along: number;
  readonly across: number;
  readonly length: number;
  readonly width: number;
}

/**
 * Whether the low edge is the lower one on the sheet. On the plan with joists up the sheet it is; turning a plan whose joists
 * run across the sheet so that its boards lie level puts it on top; and face up is the mirror image of either.
 */
export const risesOnSheet = ({ direction }: Subject, view: View): boolean => (direction === 'y') === (view === 'reflected');

interface BoardOnSheet {
  readonly subject: Subject;
  readonly place: (part: Part) => Box;
  readonly upward: boolean;
  readonly view: View;
}

/** A piece on its board: its outline where it is no rectangle, and its lettering. */
function pieceParts(piece: Piece, { subject, place, upward, view }: BoardOnSheet): string[] {
  const zone = zoneOf(subject, piece);
  const { kind, corners, length } = pieceShape(piece, zone);
  const { along, across } = piece.at;
  const box = place({ along, across, length: piece.cutLength, width: piece.width });
  if (kind === 'rectangle') return [pieceSvg(piece, box, zone)];
  // A piece whose zone shows its other side when its board lies like this is turned end for end, so that its low edge stays low.
  const turned = risesOnSheet(zone, view) !== upward;
  const ring = corners.map((corner): PaperPoint => {
    const from = fromGrid(turned ? length - corner.along : corner.along);
    const spot = place({ along: along + from, across: across + fromGrid(corner.across), length: 0, width: 0 });
    return { x: spot.left, y: spot.top };
  });
  return [polygon(ring, { 'stroke-width': WIDTH.wide, 'data-piece': piece.id }), pieceSvg(piece, box, zone, ring)];
}

function offcutSvg(box: Box, size: string): string[] {
  const ring = [
    { x: box.left, y: box.top },
    { x: box.right, y: box.top },
    { x: box.right, y: box.bottom },
    { x: box.left, y: box.bottom },
  ];
  const label = fitted([[{ text: size, height: SMALL }]], box);
  return [strokes(hatch([ring]), FINE), ...label.map((each) => labelSvg({ ...each, clear: true }))];
}

function pieceSvg(piece: Piece, box: Box, subject: Subject, ring?: readonly PaperPoint[]): string {
  const { long, wide } = sizeText(piece, subject);
  const size = { text: isUp(piece) ? subject.say('piece.up') : `${long} × ${wide}`, height: SMALL };
  const number = (height: number) => ({ text: shortened(piece.id, 20, height, true), height, bold: true });
  const inOne = { ...number(SMALL), text: `${piece.id}  ${size.text}` };
  const ways = [
    [number(LETTERS.large), size],
    [number(LETTERS.medium), size],
    [inOne],
    [number(LETTERS.medium)],
    [number(SMALL)],
  ];
  return fitted(ways, box, ring).map(labelSvg).join('');
}

type Line = Pick<Label, 'text' | 'height' | 'bold'>;

/** The first of several letterings that fits a box, and a ring in it, level or else upright; nothing where none does. */
function fitted(ways: readonly (readonly Line[])[], box: Box, ring?: readonly PaperPoint[]): Label[] {
  const inner = grown(box, -0.7);
  const middle = ring === undefined ? { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 } : heartOf(ring);
  const edges = ring?.flatMap((a, i) => segmentBoxes(a, ring[(i + 1) % ring.length])) ?? [];
  const fits = (label: Label): boolean => {
    const own = boxOf(label);
    return within(own, inner) && !edges.some((edge) => overlap(grown(own, 0.7), edge));
  };
  for (const lines of ways) {
    for (const upright of [false, true]) {
      const total = lines.reduce((sum, { height }) => sum + height * 1.5, 0);
      let at = -total / 2;
      const labels = lines.map((each): Label => {
        const shift = at + (each.height * 1.5) / 2;
        at += each.height * 1.5;
        const spot = upright ? { x: middle.x + shift, y: middle.y } : { x: middle.x, y: middle.y + shift };
        return { ...each, ...spot, anchor: 'middle', upright };
      });
      if (labels.every(fits)) return labels;
    }
  }
  return [];
}

/** Where the cross cuts are, from the left end: never more than the piece that ends there. */
function alongFigures(
  { plan, unit, length }: Subject,
  { board, stock, scale }: Sketch,
  pieces: readonly Piece[],
  own: Box,
): string[] {
  const ends = new Set(pieces.map(({ at, cutLength }) => toGrid(at.along + cutLength)));
  const open = new Set(pieces.filter((piece) => proveBefore(plan, piece).length > 0).map(({ at }) => toGrid(at.along)));
  const starts = pieces.map(({ at }) => toGrid(at.along)).sort((a, b) => a - b);
  // A cut that is not final moves every cut after it; one at which no piece ends was made for the next piece.
  const isOpen = (cut: number): boolean =>
    cut > Math.min(...open, Infinity) || (!ends.has(cut) && open.has(starts.find((start) => start >= cut) ?? -1));
  const cuts = [...new Set(board.cuts.filter(({ kind }) => kind === 'cross').map(({ at }) => toGrid(at)))].sort((a, b) => a - b);
  const stations = [
    ...cuts.map((cut) => ({
      at: cut / 1000,
      text: (isOpen(cut) ? ABOUT : '') + cutFigure(ends.has(cut) || unit === 'inch' ? cut / 1000 : Math.ceil(cut / 1000), unit),
    })),
    { at: stock.length, text: length(stock.length) },
  ];
  return levelFigures(
    stations.map(({ at, text }) => ({ at: own.left + at / scale, text })),
    own.bottom,
    1,
  );
}

/** Where the rips are, from the low edge, at the right of the board. */
function acrossFigures({ unit, length }: Subject, { board, stock, scale }: Sketch, own: Box, upward: boolean): string[] {
  const rips = [...new Set(board.cuts.filter(({ kind }) => kind === 'rip').map(({ at }) => toGrid(at)))].sort((a, b) => a - b);
  if (rips.length === 0) return [];
  const level = (mm: number): number => (upward ? own.bottom - mm / scale : own.top + mm / scale);
  const stations = [
    ...rips.map((rip) => ({ at: rip / 1000, text: cutFigure(rip / 1000, unit) })),
    { at: stock.width, text: length(stock.width) },
  ];
  const figures = stations.map(({ at, text }) => ({ at: level(at), text }));
  return uprightFigures(
    figures.sort((a, b) => a.at - b.at),
    own.right,
  );
}
