import type { Point } from '../survey/point.js';
import type { Side } from '../survey/traceRings.js';
import type { Ring } from './overlayRings.js';

/** A side moved inwards as a line: a place on it, and its direction of length 1. */
interface Line {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
  readonly gap: number;
}

/** Where two sides nearly in line are moved by different gaps, their lines meet too far away to be a corner. */
const FARTHEST_CORNER = 8;

/**
 * A ring whose sides are moved to their left, each by a gap of its own, measured square to the side. Sides along the axes are moved
 * exactly; corners of others are rounded to the grid, so that a gap is kept to half a step. The ring may cross itself where
 * the area between its sides is used up.
 */
export function insetRing(ring: Ring, gapOf: (side: Side) => number): Ring {
  const lines = ring.map((a, i): Line => {
    const b = ring[(i + 1) % ring.length];
    const length = Math.sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y));
    const [dx, dy] = [(b.x - a.x) / length, (b.y - a.y) / length];
    const gap = gapOf([a, b]);
    return { x: a.x - dy * gap, y: a.y + dx * gap, dx, dy, gap };
  });
  return ring.flatMap((corner, i) => cornersBetween(corner, lines[(i + ring.length - 1) % ring.length], lines[i])).map(onGrid);
}

const onGrid = ({ x, y }: Point): Point => ({ x: Math.round(x), y: Math.round(y) });

function cornersBetween(corner: Point, before: Line, after: Line): Point[] {
  const ends = [before, after].map(({ dx, dy, gap }) => ({ x: corner.x - dy * gap, y: corner.y + dx * gap }));
  const cross = before.dx * after.dy - before.dy * after.dx;
  if (cross !== 0) {
    const along = ((after.x - before.x) * after.dy - (after.y - before.y) * after.dx) / cross;
    const met = { x: before.x + before.dx * along, y: before.y + before.dy * along };
    const far = FARTHEST_CORNER * Math.max(before.gap, after.gap);
    const [ox, oy] = [met.x - corner.x, met.y - corner.y];
    if (cross > 0 || ox * ox + oy * oy <= far * far) return [met];
  }
  return before.gap === after.gap && cross === 0 ? [ends[1]] : ends;
}
