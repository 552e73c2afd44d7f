import { isWithin } from '../survey/isWithin.js';
import { extentOf, twiceArea } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import type { Ring } from './overlayRings.js';

/** Something in one piece: its outline, anticlockwise, and its holes, clockwise. */
export interface Shape {
  readonly outline: Ring;
  readonly holes: readonly Ring[];
}

export const ringsOf = ({ outline, holes }: Shape): readonly Ring[] => [outline, ...holes];

/** What rings enclose, each part in one piece by itself; the lowest first, and of those the nearest. */
export function shapesOf(rings: readonly Ring[]): Shape[] {
  const areas = rings.map(twiceArea);
  const holes = rings.filter((_, i) => areas[i] < 0);
  const outlines = rings.filter((_, i) => areas[i] > 0);
  const shapes = outlines.map((outline) => ({
    outline,
    holes: outlines.length === 1 ? holes : holes.filter((hole) => isWithin(doubled(outline), middleOfFirst(hole))),
  }));
  if (shapes.length === 1) return shapes;
  const extents = new Map(shapes.map((shape) => [shape, extentOf(shape.outline)]));
  return shapes.sort((a, b) => {
    const [p, q] = [a, b].map((shape) => extents.get(shape) as ReturnType<typeof extentOf>);
    return p.low - q.low || p.left - q.left || p.high - q.high || p.right - q.right;
  });
}

const doubled = (ring: Ring): Point[] => ring.map(({ x, y }) => ({ x: 2 * x, y: 2 * y }));

/** The middle of the first side of a hole, on a grid twice as fine: where it touches the outline, it does so at a corner. */
const middleOfFirst = ([a, b]: Ring): Point => ({ x: a.x + b.x, y: a.y + b.y });
