import type { Point } from './point.js';

/**
 * Rings of grid points, each with a corner more wherever a corner of any ring lies on one of its sides, so that rings that share a
 * stretch of border share its ends. A corner on a slanting side can be half a step off it: within one step it is on it.
 */
export function splitRings(rings: readonly (readonly Point[])[]): Point[][] {
  const all = rings.flat();
  return rings.map((ring) => ring.flatMap((a, i) => [a, ...cornersOn(a, ring[(i + 1) % ring.length], all)]));
}

/** Corners between the ends of a side, in order along it, each place once. */
function cornersOn(a: Point, b: Point, all: readonly Point[]): Point[] {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = Math.sqrt(dx * dx + dy * dy);
  const along = ({ x, y }: Point): number => (x - a.x) * dx + (y - a.y) * dy;
  const on = all
    .filter((point) => {
      const [x, y] = [point.x - a.x, point.y - a.y];
      return along(point) > 0 && along(point) < dx * dx + dy * dy && Math.abs(dx * y - dy * x) <= length;
    })
    .sort((p, q) => along(p) - along(q));
  return on.filter(({ x, y }, i) => i === 0 || on[i - 1].x !== x || on[i - 1].y !== y);
}
