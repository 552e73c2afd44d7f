import { fromGrid, toGrid } from '../survey/grid.js';
import { isWithin } from '../survey/isWithin.js';
import { anticlockwise, corners } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import type { Room } from '../survey/room.js';
import { splitRings } from '../survey/splitRings.js';
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

/** The bounds of a part of the ceiling: walls where it reaches them, and borders of zones elsewhere, its own first. */
export function boundsOf({ outline, holes = [] }: Borders, walls: readonly NamedWall[], borders: readonly ZoneBorder[]): Bound[] {
  // The outline of a part runs straight on where a wall ends and a border begins.
  const corners = [...walls, ...borders].map(({ from }) => from);
  const inside = holes.map((hole) => sidesOf(hole, corners).map(({ from, to }) => ({ from: to, to: from })));
  return [sidesOf(outline, corners), ...inside].flat().map(({ from, to }) => {
    const on = (each: Side): boolean => liesOn(from, each) && liesOn(to, each);
    const wall = walls.find(on);
    return { name: wall?.name ?? borders.find(on)?.name ?? '', isWall: wall !== undefined, from, to };
  });
}

/** A side of a zone that no wall stands on. */
export interface ZoneBorder extends Side {
  readonly zone: string;
  readonly name: string;
}

/**
 * The borders of the zones of a room: `border of bay`, or `border of bay towards A` where a zone has borders on more than one side.
 *
 * @param towards - what the four sides of the room are called
 */
export function zoneBorders(room: Room, walls: readonly NamedWall[], towards: RoomSides, say: Say): ZoneBorder[] {
  return (room.zones ?? []).flatMap(({ id, outline }) => {
    const open = sidesOf(outline).filter(({ from, to }) => !walls.some((wall) => liesOn(from, wall) && liesOn(to, wall)));
    const faced = open.map((side) => towards[facing(side)]);
    const several = new Set(faced).size > 1;
    return open.map((side, i) => ({
      ...side,
      zone: id,
      name: several ? say('zone.borderTowards', { zone: id, wall: faced[i] }) : say('zone.border', { zone: id }),
    }));
  });
}

/** The sides of a room on the plan, whichever way its joists run. */
export type RoomSides = Readonly<Record<'left' | 'right' | 'low' | 'high', string>>;

/** Which way a side faces that has its part on the left. */
function facing({ from, to }: Side): keyof RoomSides {
  const [x, y] = [to.x - from.x, to.y - from.y];
  if (Math.abs(x) >= Math.abs(y)) return x > 0 ? 'low' : 'high';
  return y > 0 ? 'right' : 'left';
}

interface Side {
  readonly from: Point;
  readonly to: Point;
}

/** The sides of an outline as they run anticlockwise on the plan, in two where one of some places lies on them. */
function sidesOf(outline: readonly Point[], places: readonly Point[] = []): Side[] {
  const others = places.map(({ x, y }) => [{ x: toGrid(x), y: toGrid(y) }]);
  const [split] = splitRings([anticlockwise(corners(outline)), ...others]);
  const ring = split.map(({ x, y }) => ({ x: fromGrid(x), y: fromGrid(y) }));
  return ring.map((from, i) => ({ from, to: ring[(i + 1) % ring.length] }));
}

/** Whether a point lies on a wall or side, a step of the grid beside it at the most. */
function liesOn(point: Point, { from, to }: Side): boolean {
  const [a, b, p] = [from, to, point].map(({ x, y }) => ({ x: toGrid(x), y: toGrid(y) }));
  const cross = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
  const longer = Math.max(Math.abs(b.x - a.x), Math.abs(b.y - a.y));
  const between = (value: number, one: number, other: number): boolean =>
    value >= Math.min(one, other) - 1 && value <= Math.max(one, other) + 1;
  return Math.abs(cross) <= longer && between(p.x, a.x, b.x) && between(p.y, a.y, b.y);
}
