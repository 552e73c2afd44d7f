import { turn } from './outline.js';
import type { Point } from './point.js';

/** A stretch of border from one grid point to another; what it borders lies on its left. */
export type Side = readonly [from: Point, to: Point];

export const sidesOf = (ring: readonly Point[]): Side[] => ring.map((a, i) => [a, ring[(i + 1) % ring.length]]);

const keyOf = ({ x, y }: Point): string => `${x} ${y}`;

/** Rings traced from the sides that no other runs back along. No ring passes a corner twice. */
export function traceRings(sides: readonly Side[]): Point[][] {
  const from = new Map<string, Point[]>();
  const starts: Point[] = [];
  for (const [a, b] of sides) {
    const back = from.get(keyOf(b)) ?? [];
    const cancelled = back.findIndex(({ x, y }) => x === a.x && y === a.y);
    if (cancelled >= 0) {
      back.splice(cancelled, 1);
      continue;
    }
    const out = from.get(keyOf(a));
    if (out === undefined) from.set(keyOf(a), [b]);
    else out.push(b);
    starts.push(a);
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

export const withoutStraightCorners = (ring: readonly Point[]): Point[] =>
  ring.filter((at, i) => turn(ring[(i + ring.length - 1) % ring.length], at, ring[(i + 1) % ring.length]) !== 0);
