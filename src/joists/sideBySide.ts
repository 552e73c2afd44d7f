import { toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import { centreAt, directionOf, type Frame, frameOf } from './frame.js';

/** Two joists that run the same way and pass each other, grid steps. */
export interface SideBySide {
  /** The one with the lesser coordinate across the joists. */
  readonly one: Joist;
  readonly other: Joist;
  readonly frame: Frame;
  /** The stretch along them on which both run. */
  readonly low: number;
  readonly high: number;
  /** How much further one of them runs than the other, at the end where that is most. */
  readonly endsApart: number;
  /** What is between them at both ends of that stretch; negative where they lie over each other. */
  readonly between: readonly [number, number];
}

/** How two joists lie beside each other; nothing where they do not pass. */
export function sideBySide(a: Joist, b: Joist): SideBySide | undefined {
  const direction = directionOf([a]);
  if (directionOf([b]) !== direction) return undefined;
  const frame = frameOf(direction);
  const [one, other] = frame.into(a.start).u <= frame.into(b.start).u ? [a, b] : [b, a];
  const [mine, its] = [endsOf(one, frame), endsOf(other, frame)];
  const [low, high] = [Math.max(mine.low, its.low), Math.min(mine.high, its.high)];
  if (low >= high) return undefined;
  const gap = (v: number): number => edgeAt(other, frame, v, -1) - edgeAt(one, frame, v, 1);
  return {
    one,
    other,
    frame,
    low,
    high,
    endsApart: Math.max(Math.abs(mine.low - its.low), Math.abs(mine.high - its.high)),
    between: [gap(low), gap(high)],
  };
}

function endsOf({ start, end }: Joist, frame: Frame): { readonly low: number; readonly high: number } {
  const [a, b] = [frame.into(start).v, frame.into(end).v].map(toGrid);
  return { low: Math.min(a, b), high: Math.max(a, b) };
}

/** Where the near (-1) or far (1) edge of a joist is across the room, at a distance along it; grid steps. */
export const edgeAt = (joist: Joist, frame: Frame, v: number, side: -1 | 1): number =>
  Math.round(centreAt(joist, frame, v) + (side * toGrid(joist.width)) / 2);
