import { extentOf } from '../survey/outline.js';
import { sidesOf } from '../survey/traceRings.js';
import type { Ring } from './overlayRings.js';
import type { Part } from './partsOf.js';
import type { PlacementRules } from './placementRules.js';

/** From where to where the rows of a part reach, with the nominal gap at its walls, grid steps. */
export interface Reach {
  readonly low: number;
  readonly high: number;
  /** Whether the part begins with a wall along the rows there, so that the gap may be more or less than nominal. */
  readonly lowWall: boolean;
  /** How many of its two sides are such walls. */
  readonly sides: number;
}

/**
 * Where a wall along the rows strays from a straight line by no more than its gap may be wider than nominal, the rows begin where it
 * reaches furthest in: the gap takes up the rest. One that strays more is followed by the row beside it.
 */
export function reachOf({ clear, depth }: Part, { nominal, greatest }: PlacementRules['wallGap']): Reach {
  if (clear === undefined) return { low: nominal, high: depth - nominal, lowWall: true, sides: 2 };
  const rings = clear(nominal);
  const { low, high } = extentOf(rings.flat());
  const most = greatest - nominal;
  // At a border there is no gap that could take up anything.
  const reach = {
    low: low > 0 ? low + strayOf(rings, low, 1, most) : low,
    high: high < depth ? high - strayOf(rings, high, -1, most) : high,
  };
  const [lowWall, highWall] = [reach.low === nominal, depth - reach.high === nominal];
  return { ...reach, lowWall, sides: Number(lowWall) + Number(highWall) };
}

/** How far in the corners beside an end of a part reach; nothing where most of the end is straight. */
function strayOf(rings: readonly Ring[], end: number, inwards: 1 | -1, most: number): number {
  if (most === 0) return 0;
  const beside = rings.flat().filter(({ y }) => inwards * (y - end) <= most);
  const { left, right } = extentOf(beside);
  const straight = rings
    .flatMap(sidesOf)
    .reduce((sum, [a, b]) => (a.y === end && b.y === end ? sum + Math.abs(b.x - a.x) : sum), 0);
  return 2 * straight >= right - left ? 0 : Math.max(...beside.map(({ y }) => inwards * (y - end)));
}
