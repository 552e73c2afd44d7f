import { fromGrid } from '../survey/grid.js';
import { extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import { sidesOf } from '../survey/traceRings.js';
import type { Piece } from './boardLayout.js';
import type { Ring } from './overlayRings.js';
import type { Part } from './partsOf.js';
import { ringsOf, type Shape } from './shapesOf.js';

/** What has to be marked on a piece that is no rectangle. */
export interface PieceMarks {
  readonly edgeLengths: NonNullable<Piece['edgeLengths']>;
  readonly hand?: NonNullable<Piece['hand']>;
  /** Of its near and its far end; nothing for an end that is square, or not one straight cut. */
  readonly rakes: readonly [near: number | undefined, far: number | undefined];
  /** Whether its near and its far end are square, if only for a part of its width. */
  readonly square: readonly [near: boolean, far: boolean];
}

export function pieceMarks({ mirrored, frame }: Part, shape: Shape): PieceMarks {
  const { left, right, low, high } = extentOf(shape.outline);
  const { outline } = shape;
  const lengths = [low, high].map((level) => fromGrid(lengthAt(outline, level)));
  const edgeLengths = mirrored.v ? { low: lengths[1], high: lengths[0] } : { low: lengths[0], high: lengths[1] };
  if (outline.length === 4 && shape.holes.length === 0 && outline.every(({ x }) => x === left || x === right)) {
    return { edgeLengths, rakes: [undefined, undefined], square: [true, true] };
  }
  const turned = mirrored.u === mirrored.v ? 1 : -1;
  const rakes = ([-1, 1] as const).map((side) => {
    const rake = rakeOf(outline, side, low, high);
    return rake === 0 ? undefined : fromGrid(turned * rake);
  });
  const [near, far] = [left, right].map((end) => uprightAt(outline, end) > 0);
  const marks = { edgeLengths, rakes: [rakes[0], rakes[1]], square: [near, far] } as const;
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

const lengthAt = (ring: Ring, level: number): number =>
  sidesOf(ring).reduce((sum, [a, b]) => (a.y === level && b.y === level ? sum + Math.abs(b.x - a.x) : sum), 0);

const uprightAt = (ring: Ring, place: number): number =>
  sidesOf(ring).reduce((sum, [a, b]) => (a.x === place && b.x === place ? sum + Math.abs(b.y - a.y) : sum), 0);

/** How far the corner of an end at the high edge lies beyond that at the low edge, where one straight cut joins the two. */
function rakeOf(ring: Ring, side: 1 | -1, low: number, high: number): number {
  const cornerAt = (level: number): number => {
    let best = -1;
    ring.forEach(({ x, y }, i) => {
      if (y === level && (best < 0 || side * x > side * ring[best].x)) best = i;
    });
    return best;
  };
  const [from, to] = [cornerAt(low), cornerAt(high)];
  const apart = Math.abs(from - to);
  return apart === 1 || apart === ring.length - 1 ? ring[to].x - ring[from].x : 0;
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
