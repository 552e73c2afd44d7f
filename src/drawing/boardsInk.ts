import type { Piece } from '../boards/boardLayout.js';
import type { Frame } from '../joists/frame.js';
import { fromGrid } from '../survey/grid.js';
import { anticlockwise, corners, type Extent, extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import { type Ink, inkOn } from './ink.js';
import { WIDTH } from './lineTypes.js';
import type { Sheet } from './sheet.js';
import { isUp } from './stillToFix.js';
import { type Subject, zoneOf } from './subject.js';
import { type PaperPoint, polygon, strokes } from './svg.js';

/** Ticks on the inner side of a cut edge: how far apart and how long, mm on paper. */
const TICK = { pitch: 2.5, length: 1.6, lean: 0.9 } as const;

/** The pieces: outlines, and of those that are not up ticks along every edge that is cut. Holes are drawn as the openings that they are for. */
export function boardsInk(subject: Subject, sheet: Sheet): Ink[] {
  return subject.plan.layout.pieces.flatMap((piece) => {
    const ticks = isUp(piece) ? [] : cutEdges(piece, zoneOf(subject, piece).frame).flatMap((edge) => ticksAlong(edge, sheet));
    return [
      ...inkOn('board', [
        polygon(piece.outline.map(sheet.place), {
          'stroke-width': WIDTH.wide,
          'stroke-linejoin': 'miter',
          'data-piece': piece.id,
        }),
      ]),
      ...(ticks.length === 0 ? [] : inkOn('cut', [strokes(ticks, { 'stroke-width': WIDTH.narrow, 'data-piece': piece.id })])),
    ];
  });
}

/** An edge of a piece as it runs round the piece, with the piece on its left on the plan. */
interface Edge {
  readonly from: Point;
  readonly to: Point;
}

/**
 * Edges that a saw or knife made: ends and long edges that the layout says were cut, and every edge inside the piece's extent,
 * which is a notch or a scribed wall.
 */
export function cutEdges(piece: Piece, frame: Frame): Edge[] {
  const ring = anticlockwise(corners(piece.outline)).map(({ x, y }) => ({ x: fromGrid(x), y: fromGrid(y) }));
  const points = ring.map(frame.into);
  const extent = extentOf(points.map(({ u, v }) => ({ x: u, y: v })));
  return ring.flatMap((from, i) => {
    const next = (i + 1) % ring.length;
    const made = madeOf(piece, points[i], points[next], extent);
    return made === 'cut' ? [{ from, to: ring[next] }] : [];
  });
}

type FramePoint = ReturnType<Frame['into']>;

function madeOf(piece: Piece, a: FramePoint, b: FramePoint, extent: Extent): 'cut' | 'bound' | 'factory' {
  if (a.u === b.u && a.u === extent.left) return piece.ends[0].made;
  if (a.u === b.u && a.u === extent.right) return piece.ends[1].made;
  if (a.v === b.v && a.v === extent.low) return piece.edges.low;
  if (a.v === b.v && a.v === extent.high) return piece.edges.high;
  return 'cut';
}

/** Slanting ticks on the piece's side of an edge. */
export function ticksAlong({ from, to }: Edge, sheet: Pick<Sheet, 'place' | 'view'>): (readonly [PaperPoint, PaperPoint])[] {
  const [a, b] = [sheet.place(from), sheet.place(to)];
  const length = Math.sqrt((b.x - a.x) ** 2 + (b.y - a.y) ** 2);
  if (length === 0) return [];
  const along = { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
  // On the sheet y counts downward, so the piece lies to the right of an edge in the reflected view, to its left looking up.
  const turn = sheet.view === 'reflected' ? 1 : -1;
  const inward = { x: along.y * turn, y: -along.x * turn };
  const count = Math.max(1, Math.round(length / TICK.pitch));
  const pitch = length / count;
  return Array.from({ length: count }, (_, i) => {
    const foot = { x: a.x + along.x * (i + 0.5) * pitch, y: a.y + along.y * (i + 0.5) * pitch };
    const tip = {
      x: foot.x + inward.x * TICK.length + along.x * TICK.lean,
      y: foot.y + inward.y * TICK.length + along.y * TICK.lean,
    };
    return [foot, tip] as const;
  });
}
