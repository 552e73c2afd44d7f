import { fromGrid } from './grid.js';
import { isWithin } from './isWithin.js';
import { anticlockwise, corners, extentOf, turn, twiceArea } from './outline.js';
import type { Point } from './point.js';
import type { Room } from './room.js';
import { splitRings } from './splitRings.js';

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
  const rings = ringsOf([room, ...others.map((zone) => [...zone].reverse())]).map(withoutStraightCorners);
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

const keyOf = ({ x, y }: Point): string => `${x} ${y}`;

/** Rings traced from the sides that no other runs back along. No ring passes a corner twice. */
function ringsOf(borders: readonly (readonly Point[])[]): Point[][] {
  const from = new Map<string, Point[]>();
  const starts: Point[] = [];
  for (const border of borders) {
    border.forEach((a, i) => {
      const b = border[(i + 1) % border.length];
      const back = from.get(keyOf(b)) ?? [];
      const cancelled = back.findIndex(({ x, y }) => x === a.x && y === a.y);
      if (cancelled >= 0) {
        back.splice(cancelled, 1);
        return;
      }
      const out = from.get(keyOf(a));
      if (out === undefined) from.set(keyOf(a), [b]);
      else out.push(b);
      starts.push(a);
    });
  }
  return starts.flatMap((start) => {
    const rings: Point[][] = [];
    let path: Point[] = [];
    for (let at: Point | undefined = start; at !== undefined; ) {
      const here: Point = at;
      const before = path.findIndex(({ x, y }) => x === here.x && y === here.y);
      if (before >= 0) {
        rings.push(path.slice(before));
        path = path.slice(0, before);
      }
      const out: Point[] = from.get(keyOf(here)) ?? [];
      const last = path[path.length - 1];
      const next: number = last === undefined ? 0 : leftmost(last, here, out);
      path.push(here);
      at = out.splice(next, 1)[0];
    }
    return rings;
  });
}

/** Of the ways on from a corner the one that turns most to the left, which keeps parts that only touch apart. */
function leftmost(from: Point, at: Point, ways: readonly Point[]): number {
  const rank = (way: Point): number => (turn(from, at, way) > 0 ? 2 : turn(from, at, way) === 0 ? 1 : 0);
  let best = 0;
  ways.forEach((way, i) => {
    const [mine, its] = [rank(way), rank(ways[best])];
    if (mine > its || (mine === its && turn(at, ways[best], way) > 0)) best = i;
  });
  return best;
}

const withoutStraightCorners = (ring: readonly Point[]): Point[] =>
  ring.filter((at, i) => turn(ring[(i + ring.length - 1) % ring.length], at, ring[(i + 1) % ring.length]) !== 0);
