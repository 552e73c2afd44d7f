import { extentOf, twiceArea } from '../survey/outline.js';
import type { Side } from '../survey/traceRings.js';
import type { BoardedArea } from './boardedArea.js';
import { insetRing } from './insetRing.js';
import { overlayRings, type Ring } from './overlayRings.js';

/** What is left this thin between walls and openings is the rounding of slanting sides, grid steps. */
const HAIR = 2;

/** Where boards may lie: an area less the gap to its walls and less its openings; rings on the plan, in grid steps. */
export function clearRings({ rings, isBorder }: BoardedArea, openings: readonly Ring[], gapOf: (wall: Side) => number): Ring[] {
  const inset = rings.map((ring) => insetRing(ring, (side) => (isBorder(side) ? 0 : gapOf(side))));
  return overlayRings([inset, openings], ([area, opening]) => area > 0 && opening === 0).filter((ring) => {
    const { left, right, low, high } = extentOf(ring);
    return Math.abs(twiceArea(ring)) > 2 * HAIR * (right - left + high - low);
  });
}
