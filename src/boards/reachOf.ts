import { extentOf } from '../survey/outline.js';
import type { Part } from './partsOf.js';

/** From where to where the rows of a part reach, with the nominal gap at its walls, grid steps. */
export interface Reach {
  readonly low: number;
  readonly high: number;
  /** Whether the part begins with a wall along the rows there, so that the gap may be more or less than nominal. */
  readonly lowWall: boolean;
  /** How many of its two sides are such walls. */
  readonly sides: number;
}

export function reachOf({ clear, depth }: Part, gap: number): Reach {
  if (clear === undefined) return { low: gap, high: depth - gap, lowWall: true, sides: 2 };
  const { low, high } = extentOf(clear(gap).flat());
  const [lowWall, highWall] = [low === gap, depth - high === gap];
  return { low, high, lowWall, sides: Number(lowWall) + Number(highWall) };
}
