import { fromGrid, toGrid } from './grid.js';
import type { Point } from './point.js';

/** Whether a grid point is inside a ring of grid points: a ray along x crosses its sides an odd number of times. */
export function isWithin(ring: readonly Point[], { x, y }: Point): boolean {
  let inside = false;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length];
    if (a.y > y === b.y > y) return;
    const side = (b.x - a.x) * (y - a.y) - (x - a.x) * (b.y - a.y);
    if (side > 0 === b.y > a.y) inside = !inside;
  });
  return inside;
}

/** Distance from a grid point to the nearest side of a ring, whole grid steps upwards. */
export function distanceTo(ring: readonly Point[], point: Point): number {
  let least = Infinity;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length];
    const [dx, dy] = [fromGrid(b.x - a.x), fromGrid(b.y - a.y)];
    const [px, py] = [fromGrid(point.x - a.x), fromGrid(point.y - a.y)];
    const along = Math.min(1, Math.max(0, (px * dx + py * dy) / (dx * dx + dy * dy)));
    const [ox, oy] = [px - along * dx, py - along * dy];
    least = Math.min(least, ox * ox + oy * oy);
  });
  return toGrid(Math.sqrt(least));
}
