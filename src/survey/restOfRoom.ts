import { fromGrid } from './grid.js';
import { isWithin } from './isWithin.js';
import { anticlockwise, corners, extentOf, twiceArea } from './outline.js';
import type { Point } from './point.js';
import type { Room } from './room.js';
import { splitRings } from './splitRings.js';
import { sidesOf, traceRings, withoutStraightCorners } from './traceRings.js';

/** A part of a ceiling in one piece, mm. */
export interface Part {
  readonly outline: readonly Point[];
  /** Zones that lie wholly within it. */
  readonly holes: readonly (readonly Point[])[];
}

/** Parts and holes whose mean width is no more than this many grid steps are the rounding of shared slanting borders. */
const HAIR = 2;

/**
 * What of a room lies outside all of its zones, in order from the least coordinates. The border of the rest is the room's border
 * less those of the zones: stretches that both have cancel out, and what is left is traced into rings.
 */
export function restOfRoom({ outline, zones = [] }: Room): Part[] {
  if (zones.length === 0) return [{ outline, holes: [] }];
  const [room, ...others] = splitRings(
    [outline, ...zones.map((zone) => zone.outline)].map((each) => anticlockwise(corners(each))),
  );
  const rings = traceRings([room, ...others.map((zone) => [...zone].reverse())].flatMap(sidesOf)).map(withoutStraightCorners);
  const whole = rings.filter((ring) => ring.length > 2 && Math.abs(twiceArea(ring)) > 2 * HAIR * halfGirth(ring));
  const holes = whole.filter((ring) => twiceArea(ring) < 0);
  return whole
    .filter((ring) => twiceArea(ring) > 0)
    .map((ring) => ({ ring, its: holes.filter((hole) => isWithin(doubled(ring), inner(hole))) }))
    .sort((a, b) => compareRings(a.ring, b.ring))
    .map(({ ring, its }) => ({ outline: onPlan(ring), holes: its.map(onPlan) }));
}

const halfGirth = (ring: readonly Point[]): number => {
  const { left, right, low, high } = extentOf(ring);
  return right - left + high - low;
};

const doubled = (ring: readonly Point[]): Point[] => ring.map(({ x, y }) => ({ x: 2 * x, y: 2 * y }));

/** The middle of a hole's first side, on a grid twice as fine: where a hole touches a wall, it does so at a corner. */
const inner = ([a, b]: readonly Point[]): Point => ({ x: a.x + b.x, y: a.y + b.y });

const onPlan = (ring: readonly Point[]): Point[] => ring.map(({ x, y }) => ({ x: fromGrid(x), y: fromGrid(y) }));

function compareRings(a: readonly Point[], b: readonly Point[]): number {
  const [p, q] = [extentOf(a), extentOf(b)];
  return p.low - q.low || p.left - q.left || p.high - q.high || p.right - q.right;
}
