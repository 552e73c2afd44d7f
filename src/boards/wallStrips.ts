import { anticlockwise } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import { type Side, sidesOf } from '../survey/traceRings.js';
import type { Ring } from './overlayRings.js';

/** A side, how far boards keep from it, its direction, and its ends moved that far to its left. */
interface Strip {
  readonly side: Side;
  readonly gap: number;
  readonly dx: number;
  readonly dy: number;
  readonly ends: readonly [Point, Point];
}

/**
 * What boards keep clear of along the walls: for each side of a ring a strip as wide as its gap, measured square to the side, and
 * between the strips of two walls that turn outwards the corner between them. About a wall that ends in the room the corner is
 * no further from its tip than a square one. Sides along the axes are moved exactly; other corners are rounded to the grid, so that
 * a gap is kept to half a step.
 */
export function wallStrips(ring: Ring, gapOf: (side: Side) => number): Ring[] {
  const strips = sidesOf(ring).map((side) => stripOf(side, gapOf(side)));
  return strips.flatMap((strip, i) => {
    if (strip.gap === 0) return [];
    const [a, b] = strip.side;
    const own = [a, b, strip.ends[1], strip.ends[0]];
    const after = strips[(i + 1) % strips.length];
    return [own, ...cornerBetween(strip, after)].map((each) => anticlockwise(each.map(onGrid)));
  });
}

function stripOf(side: Side, gap: number): Strip {
  const [a, b] = side;
  const length = Math.sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y));
  const [dx, dy] = [(b.x - a.x) / length, (b.y - a.y) / length];
  const moved = ({ x, y }: Point): Point => ({ x: x - dy * gap, y: y + dx * gap });
  return { side, gap, dx, dy, ends: [moved(a), moved(b)] };
}

const onGrid = ({ x, y }: Point): Point => ({ x: Math.round(x), y: Math.round(y) });

function cornerBetween(before: Strip, after: Strip): Ring[] {
  const turn = before.dx * after.dy - before.dy * after.dx;
  const ahead = before.dx * after.dx + before.dy * after.dy;
  if (after.gap === 0 || turn > 0 || (turn === 0 && ahead > 0)) return [];
  const [corner, from, to] = [before.side[1], before.ends[1], after.ends[0]];
  if (ahead >= 0) {
    const along = ((to.x - from.x) * after.dy - (to.y - from.y) * after.dx) / turn;
    return [[corner, from, on(from, before, along), to]];
  }
  return [[corner, from, on(from, before, before.gap), on(to, after, -after.gap), to]];
}

const on = ({ x, y }: Point, { dx, dy }: Strip, length: number): Point => ({ x: x + dx * length, y: y + dy * length });
