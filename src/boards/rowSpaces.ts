import type { ObjectiveName } from './objectives.js';
import type { PlacementProblem } from './placementProblem.js';
import type { RowLayout } from './rowLayouts.js';
import { rowSets } from './rowSets.js';
import { type RowSpace, rowSpace } from './rowSpace.js';
import { staggering } from './staggering.js';

/** The divisions into rows on which a layout may be; or those among `more` of them that are none of the usual ones. */
export function rowSpaces(
  problem: PlacementProblem,
  names: readonly ObjectiveName[],
  more: readonly RowLayout[] = [],
): RowSpace[] {
  const canBeStaggered = staggering();
  return rowSets(problem, more)
    .filter((set) => more.length === 0 || more.includes(set.layout))
    .filter((set) => canBeStaggered(set) !== false)
    .map((set) => rowSpace(problem, set, names))
    .filter(({ least }) => !least.includes(Infinity));
}
