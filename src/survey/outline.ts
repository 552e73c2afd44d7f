import { toGrid } from './grid.js';
import type { Point } from './point.js';

/** The corners of an outline on the grid, without a repeated first corner. */
export function corners(outline: readonly Point[]): Point[] {
  const points = outline.map((point) => ({ x: toGrid(point.x), y: toGrid(point.y) }));
  const first = points[0];
  const last = points[points.length - 1];
  if (points.length > 1 && first.x === last.x && first.y === last.y) points.pop();
  return points;
}

/** Twice the signed area of grid points, in square grid steps: positive when they run anticlockwise on the plan. */
export function twiceArea(points: readonly Point[]): number {
  // Relative to the first corner, so that the products stay exact wherever the origin is.
  let sum = 0;
  const origin = points[0];
  for (let i = 1; i + 1 < points.length; i++) {
    sum += (points[i].x - origin.x) * (points[i + 1].y - origin.y) - (points[i + 1].x - origin.x) * (points[i].y - origin.y);
  }
  return sum;
}

/** Grid points in anticlockwise order. */
export const anticlockwise = (points: readonly Point[]): readonly Point[] =>
  twiceArea(points) < 0 ? [...points].reverse() : points;

/** Area enclosed by an outline in mm, in m2. */
export const areaM2 = (outline: readonly Point[]): number => Math.abs(twiceArea(corners(outline))) / 2 / 1e12;

/** Least and greatest coordinates of an outline, in its own unit. */
export interface Extent {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

export function extentOf(points: readonly Point[]): Extent {
  let left = Infinity;
  let right = -Infinity;
  let low = Infinity;
  let high = -Infinity;
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  return { left, right, low, high };
}

/** Whether no two sides of an outline touch or cross except where they share a corner. */
export function isSimple(outline: readonly Point[]): boolean {
  const points = corners(outline);
  const count = points.length;
  if (count < 3 || twiceArea(points) === 0) return false;
  const corner = (i: number): Point => points[i % count];
  for (let i = 0; i < count; i++) {
    if (turn(corner(i), corner(i + 1), corner(i + 2)) === 0 && foldsBack(corner(i), corner(i + 1), corner(i + 2))) return false;
    for (let k = i + 2; k < count; k++) {
      if (i === 0 && k === count - 1) continue;
      if (segmentsMeet(corner(i), corner(i + 1), corner(k), corner(k + 1))) return false;
    }
  }
  return true;
}

/** Which way three points turn: 1 anticlockwise, 0 straight on, -1 clockwise. */
export const turn = (a: Point, b: Point, c: Point): number => Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));

const foldsBack = (a: Point, b: Point, c: Point): boolean => (a.x - b.x) * (c.x - b.x) + (a.y - b.y) * (c.y - b.y) >= 0;

function segmentsMeet(a: Point, b: Point, c: Point, d: Point): boolean {
  const [p, q, r, s] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
  if (p !== q && r !== s) return true;
  const within = (m: Point, n: Point, o: Point): boolean =>
    Math.min(m.x, n.x) <= o.x && o.x <= Math.max(m.x, n.x) && Math.min(m.y, n.y) <= o.y && o.y <= Math.max(m.y, n.y);
  return (
    (p === 0 && within(a, b, c)) || (q === 0 && within(a, b, d)) || (r === 0 && within(c, d, a)) || (s === 0 && within(c, d, b))
  );
}
