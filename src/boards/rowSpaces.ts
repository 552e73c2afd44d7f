import type { ObjectiveName } from './objectives.js';
import type { PlacementProblem } from './placementProblem.js';
import { rowSets } from './rowSets.js';
import { type RowSpace, rowSpace } from './rowSpace.js';
import { staggering } from './staggering.js';

/** The divisions into rows on which a layout may be. */
export function rowSpaces(problem: PlacementProblem, names: readonly ObjectiveName[]): RowSpace[] {
  const canBeStaggered = staggering();
  return rowSets(problem)
    .filter((set) => canBeStaggered(set) !== false)
    .map((set) => rowSpace(problem, set, names))
    .filter(({ least }) => !least.includes(Infinity));
}
