import { toGrid } from '../survey/grid.js';
import { corners, twiceArea } from '../survey/outline.js';
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

type Zone = NonNullable<Room['zones']>[number];

/** The bounds of a zone: walls where it reaches them, and its own border elsewhere. */
export function boundsOfZone({ id, outline }: Zone, walls: readonly NamedWall[], say: Say): Bound[] {
  return sidesOf(outline).map(({ from, to }) => {
    const wall = walls.find((each) => liesOn(from, each) && liesOn(to, each));
    return { name: wall?.name ?? say('zone.border', { zone: id }), isWall: wall !== undefined, from, to };
  });
}

/** The bounds of what lies outside all zones: the walls that no zone has to itself, and the borders of the zones from outside. */
export function boundsOfRest(room: Room, walls: readonly NamedWall[], say: Say): Bound[] {
  const borders = (room.zones ?? []).flatMap((zone) =>
    boundsOfZone(zone, walls, say)
      .filter(({ isWall }) => !isWall)
      .map((bound) => ({ ...bound, from: bound.to, to: bound.from })),
  );
  const turned = isClockwise(room.outline);
  const zoned = (room.zones ?? []).flatMap(({ outline }) => sidesOf(outline));
  const shared = walls.filter(({ from, to }) => !zoned.some((side) => liesOn(from, side) && liesOn(to, side)));
  const own = shared.map(({ name, from, to }) => ({
    name,
    isWall: true,
    from: turned ? to : from,
    to: turned ? from : to,
  }));
  return [...own, ...borders];
}

const isClockwise = (outline: readonly Point[]): boolean => twiceArea(corners(outline)) < 0;

/** The sides of an outline as they run anticlockwise on the plan. */
function sidesOf(outline: readonly Point[]): { readonly from: Point; readonly to: Point }[] {
  const points = corners(outline).map((_, i) => outline[i]);
  const ring = isClockwise(outline) ? points.reverse() : points;
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
