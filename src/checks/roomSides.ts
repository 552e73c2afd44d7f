import type { Frame } from '../joists/frame.js';
import { corners } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import type { Room } from '../survey/room.js';
import { splitRings } from '../survey/splitRings.js';
import { distance } from './distance.js';
import { HAIR } from './hair.js';
import { type GridPoint, type Ring, ringOf } from './solid.js';

/** A wall, or a border towards another part of the ceiling; grid steps, in the frame. */
export interface RoomSide {
  readonly from: GridPoint;
  readonly to: GridPoint;
  /** Index of the outline's edge; absent for a border. */
  readonly wall?: number;
}

interface Region {
  readonly outline: readonly Point[];
  readonly holes?: readonly (readonly Point[])[];
}

/** The sides of a part of the room, ring by ring. A side that is a wall for some of its length is parted there. */
export function roomSides(room: Room, { outline, holes = [] }: Region, frame: Frame): RoomSide[][] {
  const sides = (ring: Ring): RoomSide[] => ring.map((from, i) => ({ from, to: ring[(i + 1) % ring.length] }));
  const walls = sides(ringOf(room.outline, frame));
  if (outline === room.outline) return [walls.map((side, wall) => ({ ...side, wall }))];
  const [, ...rings] = splitRings([room.outline, outline, ...holes].map(corners));
  return rings.map((ring) =>
    sides(ring.map(frame.into)).map((side) => {
      const wall = walls.findIndex((each) => [side.from, side.to].every((end) => distance(end, each) <= HAIR));
      return wall < 0 ? side : { ...side, wall };
    }),
  );
}
