import { toGrid } from '../survey/grid.js';
import type { Direction, Joist } from '../survey/joist.js';
import type { Point } from '../survey/point.js';

/** A point of a frame: `u` across the joists, `v` along them. */
export interface FramePoint {
  readonly u: number;
  readonly v: number;
}

/**
 * The ceiling turned so that joists run up: `u` across the joists (along the boards and the rows), `v` along the joists (row
 * on row). Joists along y keep the plan as it is; joists along x swap the axes. One place knows this; the steps that place,
 * check and fix boards work in `u` and `v`.
 */
export interface Frame {
  readonly direction: Direction;
  /** A plan point in the frame; units are kept. */
  readonly into: (point: Point) => FramePoint;
  /** A point of the frame on the plan; units are kept. */
  readonly back: (u: number, v: number) => Point;
}

export const frameOf = (direction: Direction): Frame =>
  direction === 'y'
    ? { direction, into: ({ x, y }) => ({ u: x, v: y }), back: (u, v) => ({ x: u, y: v }) }
    : { direction, into: ({ x, y }) => ({ u: y, v: x }), back: (u, v) => ({ x: v, y: u }) };

/** The axis along which most of the joists' length runs. */
export function directionOf(joists: readonly Joist[]): Direction {
  let along = { x: 0, y: 0 };
  for (const { start, end } of joists) {
    along = { x: along.x + Math.abs(end.x - start.x), y: along.y + Math.abs(end.y - start.y) };
  }
  return along.x > along.y ? 'x' : 'y';
}

/** Where a joist's centre line is at a distance along the joists: grid steps in, whole grid steps out. */
export function centreAt(joist: Joist, frame: Frame, vGrid: number): number {
  const start = frame.into({ x: toGrid(joist.start.x), y: toGrid(joist.start.y) });
  const end = frame.into({ x: toGrid(joist.end.x), y: toGrid(joist.end.y) });
  if (start.u === end.u || start.v === end.v) return start.u;
  return Math.round(start.u + ((end.u - start.u) * (vGrid - start.v)) / (end.v - start.v));
}
