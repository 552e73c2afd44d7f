import { type LocatedZone, locateZones } from '../joists/locateZones.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { rulesOf } from '../rules/withRules.js';
import { toGrid } from '../survey/grid.js';
import { type Problem, problem, refuse } from '../survey/inputError.js';
import { type Part, partsOf } from './partsOf.js';
import type { PlacedJoist } from './partView.js';
import { type PlacementRules, placementRules } from './placementRules.js';
import type { Preference } from './preference.js';
import type { LayingRequest } from './standing.js';
import { type Stock, stocksOf } from './stocksOf.js';

/** What has to be laid, in whole grid steps. */
export interface PlacementProblem {
  readonly request: LayingRequest;
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
export function placementProblem(request: LayingRequest): PlacementProblem {
  const set = rulesOf(request.rules);
  const rules = placementRules(set);
  const located = locateZones(request.room, request.joists, set);
  const rowWidths = request.rowWidths?.map(toGrid);
  const parts = partsOf(located, request.room.openings ?? [], rules, rowWidths, request);
  const small = parts.flatMap((part, index) => (hasPlace(part, rules) ? [] : [tooSmall(request, located[index])]));
  if (small.length > 0) refuse(...small);
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

/** Whether the gaps at its walls leave anything of a part. */
function hasPlace({ clear, length, depth }: Part, { wallGap: { nominal } }: PlacementRules): boolean {
  return clear === undefined ? Math.min(length, depth) > 2 * nominal : clear(nominal).length > 0;
}

function tooSmall({ room: { zones = [] } }: LayingRequest, { zone }: LocatedZone): Problem {
  const path = zone === undefined ? 'room.outline' : `room.zones[${zones.findIndex(({ id }) => id === zone)}].outline`;
  return problem('room-too-small', path, 'a room wider than the gaps to its walls', 'nothing left between them');
}
