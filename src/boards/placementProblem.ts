import { type LocatedZone, locateZones } from '../joists/locateZones.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { rulesOf } from '../rules/withRules.js';
import { toGrid } from '../survey/grid.js';
import { type Part, type PlacedJoist, partsOf } from './partsOf.js';
import type { PlacementRequest } from './placementRequest.js';
import { type PlacementRules, placementRules } from './placementRules.js';
import type { Preference } from './preference.js';
import { type Stock, stocksOf } from './stocksOf.js';

/** What has to be laid, in whole grid steps. */
export interface PlacementProblem {
  readonly request: PlacementRequest;
  readonly set: RuleSet;
  /** Where the joists of each part come from. */
  readonly located: readonly LocatedZone[];
  readonly prefer: Preference;
  /** In the order in which their rows are numbered. */
  readonly parts: readonly Part[];
  /** Those of all parts, one part after another. */
  readonly joists: readonly PlacedJoist[];
  readonly stocks: readonly Stock[];
  readonly rules: PlacementRules;
  readonly rowWidths: readonly number[] | undefined;
}

/** Turns a request that has passed its door into whole numbers. */
export function placementProblem(request: PlacementRequest): PlacementProblem {
  const set = rulesOf(request.rules);
  const rules = placementRules(set);
  const located = locateZones(request.room, request.joists, set);
  const rowWidths = request.rowWidths?.map(toGrid);
  const parts = partsOf(located, request.room.openings ?? [], rules, rowWidths);
  return {
    request,
    set,
    located,
    prefer: request.prefer ?? 'boards',
    parts,
    joists: parts.flatMap((part) => part.joists),
    stocks: stocksOf(request.boards, set),
    rules,
    rowWidths,
  };
}
