import { extentOf, twiceArea } from '../survey/outline.js';
import type { Side } from '../survey/traceRings.js';
import type { BoardedArea } from './boardedArea.js';
import { overlayRings, type Ring } from './overlayRings.js';
import { wallStrips } from './wallStrips.js';

/** What is left this thin between walls and openings is the rounding of slanting sides, grid steps. */
const HAIR = 2;

/** Where boards may lie: an area less the gap to its walls and less its openings; rings on the plan, in grid steps. */
export function clearRings({ rings, isBorder }: BoardedArea, openings: readonly Ring[], gapOf: (wall: Side) => number): Ring[] {
  const strips = rings.flatMap((ring) => wallStrips(ring, (side) => (isBorder(side) ? 0 : gapOf(side))));
  return overlayRings([rings, [...strips, ...openings]], ([area, kept]) => area > 0 && kept === 0).filter((ring) => {
    const { left, right, low, high } = extentOf(ring);
    return Math.abs(twiceArea(ring)) > 2 * HAIR * (right - left + high - low);
  });
}
