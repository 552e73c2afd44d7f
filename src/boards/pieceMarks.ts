import { fromGrid } from '../survey/grid.js';
import { type Extent, extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import { type Side, sidesOf } from '../survey/traceRings.js';
import type { Piece } from './boardLayout.js';
import type { Ring } from './overlayRings.js';
import type { Part } from './partsOf.js';
import { ringsOf, type Shape } from './shapesOf.js';

/** What has to be marked on a piece that is no rectangle. */
export interface PieceMarks {
  readonly edgeLengths: NonNullable<Piece['edgeLengths']>;
  readonly hand?: NonNullable<Piece['hand']>;
  /** Whether its low and its high edge lie along the edge of its board, if only for a part of their length. */
  readonly level: readonly [low: boolean, high: boolean];
  /** Of its near and its far end; nothing for an end that is square, or not one straight cut. */
  readonly rakes: readonly [near: number | undefined, far: number | undefined];
  /** Whether its near and its far end are square, if only for a part of its width. */
  readonly square: readonly [near: boolean, far: boolean];
}

export function pieceMarks({ mirrored, frame }: Part, shape: Shape): PieceMarks {
  const { outline } = shape;
  const extent = extentOf(outline);
  const { left, right, low, high } = extent;
  const lengths = [low, high].map((level) => fromGrid(edgeLength(outline, level, extent)));
  const edgeLengths = mirrored.v ? { low: lengths[1], high: lengths[0] } : { low: lengths[0], high: lengths[1] };
  if (shape.holes.length === 0 && isRectangle(outline, extent)) {
    return { edgeLengths, level: [true, true], rakes: [undefined, undefined], square: [true, true] };
  }
  const turned = mirrored.u === mirrored.v ? 1 : -1;
  const rakes = ([-1, 1] as const).map((side) => {
    const rake = rakeOf(outline, side, extent);
    return rake === 0 ? undefined : fromGrid(turned * rake);
  });
  const [near, far] = [left, right].map((end) => uprightAt(outline, end) > 0);
  const [lowLevel, highLevel] = [low, high].map((level) => levelAt(outline, level) > 0);
  const marks = { edgeLengths, level: [lowLevel, highLevel], rakes: [rakes[0], rakes[1]], square: [near, far] } as const;
  if (!isHanded(shape)) return marks;
  // Face up a piece is seen in a mirror. So is the plan by whoever looks across joists that run along x.
  const over = mirrored.v !== (frame.direction === 'y');
  const marked = outline.map(({ x, y }) => ({
    x: fromGrid(mirrored.u ? right - x : x - left),
    y: fromGrid(over ? high - y : y - low),
  }));
  const hand = { view: 'face up' as const, outline: mirrored.u === over ? marked : marked.reverse() };
  return { ...marks, hand };
}

const isRectangle = (ring: Ring, { left, right, low, high }: Extent): boolean =>
  ring.length === 4 && ring.every(({ x, y }) => (x === left || x === right) && (y === low || y === high));

/**
 * How long a long edge is as cut: all that runs on from where it reaches the very edge of the piece, tapered or scribed. An upright
 * step parts it, so that the foot of a notch does not count.
 */
function edgeLength(ring: Ring, level: number, extent: Extent): number {
  const sides = sidesOf(ring);
  const own = sides.map((side) => edgeOf(side, ring, extent) === level);
  const start = own.indexOf(false);
  let total = 0;
  let run = 0;
  let reaches = false;
  for (let i = 1; i <= sides.length; i++) {
    const at = (start + i) % sides.length;
    if (own[at]) {
      const [a, b] = sides[at];
      run += Math.round(Math.sqrt((b.x - a.x) ** 2 + (b.y - a.y) ** 2));
      reaches ||= a.y === level || b.y === level;
    } else {
      total += reaches ? run : 0;
      [run, reaches] = [0, false];
    }
  }
  return total;
}

/**
 * The level of the long edge that a side is of: it runs along the piece rather than across it. One cut from edge to edge is a raked
 * end all the same, unless it is all there is of its edge.
 */
function edgeOf([a, b]: Side, ring: Ring, { low, high }: Extent): number | undefined {
  const [along, across] = [b.x - a.x, Math.abs(b.y - a.y)];
  if (Math.abs(along) <= across) return undefined;
  const level = along > 0 ? low : high;
  return across === high - low && levelAt(ring, level) > 0 ? undefined : level;
}

/** How much of a ring lies at a level. */
const levelAt = (ring: Ring, level: number): number =>
  sidesOf(ring).reduce((sum, [a, b]) => (a.y === level && b.y === level ? sum + Math.abs(b.x - a.x) : sum), 0);

const uprightAt = (ring: Ring, place: number): number =>
  sidesOf(ring).reduce((sum, [a, b]) => (a.x === place && b.x === place ? sum + Math.abs(b.y - a.y) : sum), 0);

/** How far the corner of an end at the high edge lies beyond that at the low edge, where one straight cut joins the two. */
function rakeOf(ring: Ring, side: 1 | -1, extent: Extent): number {
  const { low, high } = extent;
  const cornerAt = (level: number): number => {
    let best = -1;
    ring.forEach(({ x, y }, i) => {
      if (y === level && (best < 0 || side * x > side * ring[best].x)) best = i;
    });
    return best;
  };
  const [from, to] = [cornerAt(low), cornerAt(high)];
  const cut = sidesOf(ring).find(([a, b]) => (a === ring[from] && b === ring[to]) || (a === ring[to] && b === ring[from]));
  return cut === undefined || edgeOf(cut, ring, extent) !== undefined ? 0 : ring[to].x - ring[from].x;
}

/** Whether a piece differs from its mirror image, however that is turned end for end. */
function isHanded(shape: Shape): boolean {
  const points = ringsOf(shape).flat();
  const { left, right, low, high } = extentOf(points);
  const told = (turn: (point: Point) => Point): string =>
    points
      .map(turn)
      .map(({ x, y }) => `${x} ${y}`)
      .sort()
      .join();
  const own = told((point) => point);
  return own !== told(({ x, y }) => ({ x: left + right - x, y })) && own !== told(({ x, y }) => ({ x, y: low + high - y }));
}
