import { normalBelowQuick } from './normal.js';

/** Share of holes at distance `away` from a joist's expected centre that are within its width, averaged over what the width may be. */
export function metTimber(away: number, sd: number, width: number, widthSd: number): number {
  const at = (w: number): number => normalBelowQuick((w / 2 - away) / sd) + normalBelowQuick((w / 2 + away) / sd) - 1;
  if (widthSd < 2) return at(width);
  // Three points of Gauss and Hermite, good for any smooth function of a normal width.
  const off = 1.7320508075688772 * widthSd;
  return (4 * at(width) + at(width - off) + at(width + off)) / 6;
}
