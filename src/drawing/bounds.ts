import { fromGrid, toGrid } from '../survey/grid.js';
import { isWithin } from '../survey/isWithin.js';
import { anticlockwise, corners } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import type { Room } from '../survey/room.js';
import type { NamedWall } from './wallNames.js';
import type { Say } from './words.js';

/** What bounds a part of the ceiling: a wall, or the border of a zone. It has the part on its left as it runs. */
export interface Bound {
  readonly name: string;
  /** A border of zones is no wall to measure to from the floor, but a line on the ceiling. */
  readonly isWall: boolean;
  readonly from: Point;
  readonly to: Point;
}

/** What a part of the ceiling is bounded by: rings round it and round what is not part of it. */
export interface Borders {
  readonly outline: readonly Point[];
  readonly holes?: readonly (readonly Point[])[];
}

/** Whether a place lies in a part of the ceiling. */
export const isIn = ({ outline, holes = [] }: Borders, place: Point): boolean =>
  isWithin(outline, place) && !holes.some((hole) => isWithin(hole, place));

/** Looks up what is beyond a side that no wall stands on. */
export type BorderName = (from: Point, to: Point) => string;

/** The bounds of a part of the ceiling: walls where it reaches them, and borders of zones elsewhere. */
export function boundsOf({ outline, holes = [] }: Borders, walls: readonly NamedWall[], border: BorderName): Bound[] {
  const sides = [sidesOf(outline), ...holes.map((hole) => sidesOf(hole).map(({ from, to }) => ({ from: to, to: from })))].flat();
  return sides.map(({ from, to }) => {
    const wall = walls.find((each) => liesOn(from, each) && liesOn(to, each));
    return { name: wall?.name ?? border(from, to), isWall: wall !== undefined, from, to };
  });
}

/** The border of the zone, one of several, that a side lies on; said of the first of them where it lies on none. */
export const borderOf =
  (zones: NonNullable<Room['zones']>, say: Say): BorderName =>
  (from, to) => {
    const beyond = zones.find(({ outline }) => sidesOf(outline).some((side) => liesOn(from, side) && liesOn(to, side)));
    return say('zone.border', { zone: (beyond ?? zones[0])?.id ?? '' });
  };

/** The sides of an outline as they run anticlockwise on the plan. */
function sidesOf(outline: readonly Point[]): { readonly from: Point; readonly to: Point }[] {
  const ring = anticlockwise(corners(outline)).map(({ x, y }) => ({ x: fromGrid(x), y: fromGrid(y) }));
  return ring.map((from, i) => ({ from, to: ring[(i + 1) % ring.length] }));
}

/** Whether a point lies on a wall or side, a step of the grid beside it at the most. */
function liesOn(point: Point, { from, to }: Pick<NamedWall, 'from' | 'to'>): boolean {
  const [a, b, p] = [from, to, point].map(({ x, y }) => ({ x: toGrid(x), y: toGrid(y) }));
  const cross = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
  const longer = Math.max(Math.abs(b.x - a.x), Math.abs(b.y - a.y));
  const between = (value: number, one: number, other: number): boolean =>
    value >= Math.min(one, other) - 1 && value <= Math.max(one, other) + 1;
  return Math.abs(cross) <= longer && between(p.x, a.x, b.x) && between(p.y, a.y, b.y);
}
