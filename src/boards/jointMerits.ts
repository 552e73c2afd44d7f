import { bearingOf } from '../joists/bearing.js';
import type { PlacementProblem } from './placementProblem.js';
import { isUnproven } from './unproven.js';

/** What a butt joint on a joist would be worth. */
export interface JointMerit {
  /** On a joist that nobody has seen, or not well enough. */
  readonly unproven: boolean;
  /** Not sure to keep its edge distances, even on the middle of the joist. */
  readonly poor: boolean;
  /** On one half as wide again as most: two joists side by side. The place for a butt joint where all else is equal. */
  readonly wide: boolean;
}

/** Per joist of the problem. */
export function jointMerits({ parts, rules, set }: PlacementProblem): JointMerit[] {
  return parts.flatMap(({ joists }) => {
    const widths = joists.map(({ joist }) => joist.width).sort((a, b) => a - b);
    const usual = widths[Math.floor(widths.length / 2)];
    return joists.map(({ joist }): JointMerit => {
      const bearing = bearingOf(joist, 0, rules.jointGap / 1000, set);
      return {
        unproven: isUnproven(joist, bearing.withinEdgeRules),
        poor: bearing.outcome !== 'secure',
        wide: 2 * joist.width >= 3 * usual,
      };
    });
  });
}
