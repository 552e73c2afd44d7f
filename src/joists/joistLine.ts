import { fromGrid, toGrid } from '../survey/grid.js';
import type { Direction, Joist } from '../survey/joist.js';
import { corners, extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import type { Room } from '../survey/room.js';
import { frameOf } from './frame.js';
import { stretchesIn } from './stretchesIn.js';

/** Thickness of a joist when nobody measured it, mm: a planed 50; common practice, no source. Always reported as assumed. */
export const ASSUMED_WIDTH = 47;

/** The room's extent in the frame of joists that run this way, in grid steps. */
export function frameExtent(room: Room, direction: Direction): { near: number; far: number; low: number; high: number } {
  const { left, right, low, high } = extentOf(corners(room.outline));
  return direction === 'y' ? { near: left, far: right, low, high } : { near: low, far: high, low: left, high: right };
}

/** A joist's facts, its line being known at the two ends of the room. */
type Facts = Omit<Joist, 'start' | 'end'>;

/** The part of a ceiling that joists are wanted for: its outline, and the outlines of what is left out of it, mm. */
export type Area = readonly (readonly Point[])[];

/** Where joists are described in the caller's input, what precedes their ids, and the part of the room that they are wanted for. */
export interface JoistsWanted {
  readonly path?: string;
  readonly prefix?: string;
  readonly area?: Area;
}

/** A stretch of a joist, and where it begins and ends between the room's two ends along the joists: shares from 0 to 1. */
export interface JoistStretch {
  readonly joist: Joist;
  readonly begins: number;
  readonly ends: number;
}

/**
 * A joist whose centre is at these places (plan coordinates across the joists, mm) at the room's least and greatest
 * coordinate along the joists, as far as it runs in the room or in a part of it. Where it leaves the area and comes back, as in a
 * U-shaped room, each stretch is a joist by itself: `J3a`, `J3b`, from the lesser end. None where it does not run in the area.
 */
export function joistLine(
  room: Room,
  direction: Direction,
  { atStart, atEnd }: { readonly atStart: number; readonly atEnd: number },
  facts: Facts,
  area: Area = [room.outline],
): JoistStretch[] {
  const frame = frameOf(direction);
  const { low, high } = frameExtent(room, direction);
  const [from, to] = [toGrid(atStart), toGrid(atEnd)];
  const at = (v: number): number => Math.round(from + ((to - from) * (v - low)) / (high - low));
  const point = (v: number): Point => {
    const { x, y } = frame.back(at(v), v);
    return { x: fromGrid(x), y: fromGrid(y) };
  };
  const stretches = stretchesIn(
    area.map((ring) => corners(ring).map(frame.into)),
    at,
  );
  return stretches.map((stretch, index) => ({
    joist: {
      ...facts,
      id: stretches.length === 1 ? facts.id : `${facts.id}${letters(index)}`,
      start: point(stretch.from),
      end: point(stretch.to),
    },
    begins: (stretch.from - low) / (high - low),
    ends: (stretch.to - low) / (high - low),
  }));
}

/** a to z, then aa, ab and so on. */
const letters = (index: number): string =>
  `${index < 26 ? '' : letters(Math.floor(index / 26) - 1)}${String.fromCharCode(97 + (index % 26))}`;
