import { fromGrid, toGrid } from '../survey/grid.js';
import type { Point } from '../survey/point.js';
import type { Bound } from './bounds.js';
import type { Subject } from './subject.js';

/** What a tape meets that is held along an axis of the part: which bound, and how far away it is, mm. */
export interface Sighting {
  readonly bound: Bound;
  readonly distance: number;
}

/** Which way the tape is held: to the near or the far side across the joists, to the low or the high one along them. */
export type Heading = 'near' | 'far' | 'low' | 'high';

/** How far inside the very end of a part the tape may have to be held to meet a wall that faces it, mm. */
const INSETS = [0.001, 1, 10, 50, 100, 300] as const;

/**
 * Measures from a place to the first wall or border that faces it in a direction; nothing where there is none.
 *
 * @param inward - which side of the place the part lies, for a place on its very end: the tape is then held as little inside it as
 *   will do
 */
export function sighting(
  { bounds, frame }: Subject,
  place: Point,
  heading: Heading,
  inward: 1 | 0 | -1 = 0,
): Sighting | undefined {
  const across = heading === 'near' || heading === 'far';
  const way = heading === 'far' || heading === 'high' ? 1 : -1;
  const onGrid = (point: Point): Spot => {
    const { u, v } = frame.into({ x: toGrid(point.x), y: toGrid(point.y) });
    return across ? { along: u, beside: v } : { along: v, beside: u };
  };
  const { along, beside } = onGrid(place);
  const facing = bounds
    .map((bound) => ({ bound, a: onGrid(bound.from), b: onGrid(bound.to) }))
    .filter(({ a, b }) => Math.abs(b.beside - a.beside) >= Math.abs(b.along - a.along));
  for (const inset of inward === 0 ? [0] : INSETS) {
    const level = beside + inward * toGrid(inset);
    const met = facing.flatMap(({ bound, a, b }) => {
      if (a.beside > level === b.beside > level) return [];
      const at = Math.round(a.along + ((b.along - a.along) * (level - a.beside)) / (b.beside - a.beside));
      // A joist on the face of a wall may lie a step of the grid inside it.
      return (at - along) * way >= -1 ? [{ bound, away: Math.max(0, (at - along) * way) }] : [];
    });
    const [first, ...others] = met;
    if (first === undefined) continue;
    const { bound, away } = others.reduce((best, each) => (each.away < best.away ? each : best), first);
    return { bound, distance: fromGrid(away) };
  }
  return undefined;
}

/** A point on the grid, along the tape and beside it. */
interface Spot {
  readonly along: number;
  readonly beside: number;
}
