import { fromGrid } from '../survey/grid.js';
import type { Direction } from '../survey/joist.js';
import type { Mark } from '../survey/mark.js';
import type { Room } from '../survey/room.js';
import type { Assumptions } from './assumptions.js';
import { frameOf } from './frame.js';
import { frameExtent } from './joistLine.js';

/** A mark on timber in the frame of joists that run one way: `u` across them and `v` along them. */
export interface Reading {
  /** Index into the marks. */
  readonly mark: number;
  /** Across the joists, mm on the plan. */
  readonly u: number;
  /** Along the joists from the middle of the room, m. */
  readonly v: number;
  /** Variance of the reading, mm2. */
  readonly variance: number;
  /** -1 for a near edge, 1 for a far edge, 0 for the centre. */
  readonly edge: -1 | 0 | 1;
  /** A hole that met timber somewhere across its width, nobody felt for the edges. */
  readonly anywhere: boolean;
}

/** A probe that met no timber. */
export interface Miss {
  readonly mark: number;
  readonly u: number;
  readonly v: number;
}

/** The room and its marks, seen along joists that run one way. */
export interface Sight {
  readonly direction: Direction;
  /** Extent across the joists, mm on the plan. */
  readonly near: number;
  readonly far: number;
  /** Least and greatest place along the joists, m from the middle of the room. */
  readonly low: number;
  readonly high: number;
  /** In order across the joists. */
  readonly readings: readonly Reading[];
  readonly misses: readonly Miss[];
}

/** The marks as they are seen along joists that run this way. */
export function sightAlong(
  direction: Direction,
  room: Room,
  marks: readonly Mark[],
  width: number,
  assumptions: Assumptions,
): Sight {
  const frame = frameOf(direction);
  const extent = frameExtent(room, direction);
  const middle = fromGrid(extent.low + extent.high) / 2;
  const readings: Reading[] = [];
  const misses: Miss[] = [];
  marks.forEach((mark, index) => {
    const { u, v } = frame.into(mark);
    const along = (v - middle) / 1000;
    if (mark.found === false) {
      misses.push({ mark: index, u, v: along });
      return;
    }
    const kind = mark.kind ?? 'probe';
    const edge = kind === 'near-edge' ? -1 : kind === 'far-edge' ? 1 : 0;
    const anywhere = mark.centred === false && edge === 0;
    const sd = mark.sd ?? assumptions.spread[kind];
    // A hole anywhere across the timber is uniform over its width.
    const variance = anywhere ? (width * width) / 12 + sd * sd : sd * sd;
    readings.push({ mark: index, u, v: along, variance, edge, anywhere });
  });
  readings.sort((a, b) => a.u - b.u || a.v - b.v || a.mark - b.mark);
  const half = fromGrid(extent.high - extent.low) / 2000;
  return {
    direction,
    near: fromGrid(extent.near),
    far: fromGrid(extent.far),
    low: -half,
    high: half,
    readings,
    misses,
  };
}
