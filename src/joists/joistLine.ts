import { fromGrid, toGrid } from '../survey/grid.js';
import type { Direction, Joist } from '../survey/joist.js';
import { corners, extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import type { Room } from '../survey/room.js';
import { frameOf } from './frame.js';

/** Thickness of a joist when nobody measured it, mm: a planed 50; common practice, no source. Always reported as assumed. */
export const ASSUMED_WIDTH = 47;

/** The room's extent in the frame of joists that run this way, in grid steps. */
export function frameExtent(room: Room, direction: Direction): { near: number; far: number; low: number; high: number } {
  const { left, right, low, high } = extentOf(corners(room.outline));
  return direction === 'y' ? { near: left, far: right, low, high } : { near: low, far: high, low: left, high: right };
}

/** A joist's facts, its line being known at the two ends of the room. */
type Facts = Omit<Joist, 'start' | 'end'>;

/**
 * A joist whose centre is at these places (plan coordinates across the joists, mm) at the room's least and greatest
 * coordinate along the joists, as far as it runs in the room; nothing where it does not touch the room.
 */
export function joistLine(room: Room, direction: Direction, atStart: number, atEnd: number, facts: Facts): Joist | undefined {
  const frame = frameOf(direction);
  const { low, high } = frameExtent(room, direction);
  const [from, to] = [toGrid(atStart), toGrid(atEnd)];
  const at = (v: number): number => Math.round(from + ((to - from) * (v - low)) / (high - low));
  const ring = corners(room.outline).map((point) => frame.into(point));
  const crossings: number[] = [];
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i];
    const b = ring[(i + 1) % ring.length];
    const [sideA, sideB] = [a.u - at(a.v), b.u - at(b.v)];
    if (sideA === 0) crossings.push(a.v);
    if (sideA * sideB < 0) crossings.push(Math.round(a.v + ((b.v - a.v) * sideA) / (sideA - sideB)));
  }
  if (crossings.length === 0) return undefined;
  const first = Math.min(...crossings);
  const last = Math.max(...crossings);
  const point = (v: number): Point => {
    const { x, y } = frame.back(at(v), v);
    return { x: fromGrid(x), y: fromGrid(y) };
  };
  return { ...facts, start: point(first), end: point(last) };
}
