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
  const on = (axis: 'x' | 'y', value: number): string =>
    walls.find(({ from, to }) => from[axis] === value && to[axis] === value)?.name ?? say('title.figures.line');
  const { direction } = plan.meta;
  const [left, low] = [on('x', extent.left), on('y', extent.low)];
  return {
    plan,
    direction,
    frame: frameOf(direction),
    extent,
    walls,
    datum: direction === 'y' ? { across: left, along: low } : { across: low, along: left },
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
