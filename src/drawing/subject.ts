import { type Frame, frameOf } from '../joists/frame.js';
import type { CeilingPlan } from '../plan/ceilingPlan.js';
import type { Direction } from '../survey/joist.js';
import { type Extent, extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import { type FigureUnit, figure } from './figure.js';
import { type NamedWall, namedWalls } from './wallNames.js';
import { type DrawingMessages, type Say, sayWith } from './words.js';

/** A plan made ready for paper: how its parts are called and what its figures run from. */
export interface Subject {
  readonly plan: CeilingPlan;
  readonly direction: Direction;
  readonly frame: Frame;
  /** Of the room, mm. */
  readonly extent: Extent;
  readonly walls: readonly NamedWall[];
  /** What the figures across the joists run from, and those along them. */
  readonly datum: { readonly across: string; readonly along: string };
  /** The four sides of the room by the names of their walls: near and far across the joists, low and high along them. */
  readonly sides: { readonly near: string; readonly far: string; readonly low: string; readonly high: string };
  readonly unit: FigureUnit;
  readonly say: Say;
  /** A length as a bare figure, and with its unit for running text. */
  readonly length: (mm: number) => string;
  readonly withUnit: (mm: number) => string;
}

export function subjectOf(plan: CeilingPlan, unit: FigureUnit = 'mm', messages: DrawingMessages = {}): Subject {
  const say = sayWith(messages);
  const extent = extentOf(plan.room.outline);
  const walls = namedWalls(plan.room, say);
  const on = (axis: 'x' | 'y', value: number): string | undefined =>
    walls.find(({ from, to }) => from[axis] === value && to[axis] === value)?.name;
  const { direction } = plan.meta;
  const [across, along] = direction === 'y' ? (['x', 'y'] as const) : (['y', 'x'] as const);
  const bounds = { x: [extent.left, extent.right], y: [extent.low, extent.high] } as const;
  const named = { near: on(across, bounds[across][0]), low: on(along, bounds[along][0]) };
  return {
    plan,
    direction,
    frame: frameOf(direction),
    extent,
    walls,
    datum: { across: named.near ?? say('title.figures.line'), along: named.low ?? say('title.figures.line') },
    sides: {
      near: named.near ?? say('side.near'),
      far: on(across, bounds[across][1]) ?? say('side.far'),
      low: named.low ?? say('side.low'),
      high: on(along, bounds[along][1]) ?? say('side.high'),
    },
    unit,
    say,
    length: (mm) => figure(mm, unit),
    withUnit: (mm) => figure(mm, unit) + (unit === 'mm' ? ' mm' : ''),
  };
}

/** A plan point as distances from the two walls that the figures run from, mm. */
export const fromDatum = ({ frame, extent }: Subject, point: Point): { across: number; along: number } => {
  const { u, v } = frame.into({ x: point.x - extent.left, y: point.y - extent.low });
  return { across: u, along: v };
};
