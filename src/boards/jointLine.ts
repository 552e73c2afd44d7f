import { toGrid } from '../survey/grid.js';
import type { PlacedJoist } from './partView.js';
import type { PlacementRules } from './placementRules.js';

/** How a butt joint on a joist would run across a row, in the coordinates of its part. */
export interface JointLine {
  readonly joist: PlacedJoist;
  /** At the row's low edge, in its middle, and at its high edge. */
  readonly low: number;
  readonly at: number;
  readonly high: number;
  /** Timber to spare on each side beyond the least, all the way across the row. */
  readonly spare: number;
}

/**
 * A square joint on the middle of the joist while half of the joist's rake over the row stays within the bearing's tolerance, or
 * the whole of it within the accuracy of a cut; beyond that the joint is raked along the joist.
 */
export function jointLine(
  rules: PlacementRules,
  joist: PlacedJoist,
  row: { readonly low: number; readonly high: number },
): JointLine {
  const [low, at, high] = [row.low, Math.round((row.low + row.high) / 2), row.high].map(joist.centre);
  const half = Math.floor((toGrid(joist.joist.width) - rules.jointGap) / 2);
  const rake = Math.abs(high - low);
  if (rake <= Math.max(2 * (half - rules.edgeDistances), rules.cutTolerance)) {
    const away = Math.max(Math.abs(low - at), Math.abs(high - at));
    return { joist, low: at, at, high: at, spare: half - rules.leastTimber - away };
  }
  return { joist, low, at, high, spare: half - rules.leastTimber };
}

export const isRaked = ({ low, high }: Pick<JointLine, 'low' | 'high'>): boolean => low !== high;
