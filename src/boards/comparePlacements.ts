import { admit } from '../survey/door.js';
import { type BestLayout, bestAlone, bestLayout, type Outcome } from './bestLayout.js';
import type { BoardLayout } from './boardLayout.js';
import { certificateOf } from './certificateOf.js';
import { InfeasibleError } from './infeasibleError.js';
import { laidFrom } from './laidFrom.js';
import type { ObjectiveName } from './objectives.js';
import { layoutFrom } from './placeBoards.js';
import { type PlacementProblem, placementProblem } from './placementProblem.js';
import { type PlacementRequest, placementRequestSchema } from './placementRequest.js';
import { boundedRows, boundReason, moreReason } from './reasons.js';
import { whyInfeasible } from './relaxations.js';
import type { RowLayout } from './rowLayouts.js';

/** What layouts are compared by, each the less the better; and what is looked at first to find one that is best in it. */
const ORDERS: readonly (readonly ObjectiveName[])[] = [
  ['joints', 'short pieces'],
  ['short pieces', 'joints'],
];

/** Boards beyond the fewest that are thought of. */
const MORE = 3;

/**
 * The layouts between which only their user can choose: for none of them is there another found that is no worse in boards, butt
 * joints, pieces under the preferred length and cuts, and better in one of them. One more board may buy away several joints.
 *
 * @param request - as for `placeBoards`; its preference decides only between layouts that are equal in all four
 * @returns layouts, the fewest boards first; `bound` is that of all, and `piecesProven` says of one whose boards are proven to be the
 *   fewest that no layout with as many has fewer butt joints. Layouts with up to three boards more than the fewest are looked for
 * @throws InputError when a value is missing, unknown or out of range
 * @throws InfeasibleError when no layout meets the rules
 * @example
 * ```ts
 * import { comparePlacements, rectangle } from 'soffitwright';
 *
 * const layouts = comparePlacements({
 *   room: { outline: rectangle(3560, 2930) },
 *   joists: { direction: 'y', first: 150, spacing: 400, last: 3350, width: 47 },
 *   boards: [{ id: '1800', length: 1800, width: 900, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
 * });
 * console.log(layouts.map(({ boardsBought, endJoints }) => `${boardsBought} boards, ${endJoints} joints`).join('; '));
 * // 7 boards, 7 joints; 8 boards, 6 joints
 * ```
 */
export function comparePlacements(request: PlacementRequest): BoardLayout[] {
  admit(placementRequestSchema, request);
  const problem = placementProblem(request);
  const fewest = bestLayout(problem, ['boards', 'joints', 'short pieces']);
  if (fewest.best === undefined) {
    const { findings, relaxations } = whyInfeasible(problem);
    throw new InfeasibleError(findings, relaxations);
  }
  const [boards] = fewest.best.values;
  const on = fewest.proofs.map(({ space }) => space.set.layout);
  const found = [fewest.best, ...Array.from({ length: MORE + 1 }, (_, more) => atMost(problem, boards + more, on)).flat()];
  const layouts = found.flatMap((each) => told(problem, fewest, boards, each));
  return undominated(layouts);
}

const atMost = (problem: PlacementProblem, boards: number, on: readonly RowLayout[]): (BestLayout | undefined)[] =>
  ORDERS.map((order) => bestAlone(problem, [...order, 'boards'], [{ name: 'boards', most: boards }], on));

function told(
  problem: PlacementProblem,
  { bound, proofs }: Outcome,
  fewest: number,
  best: BestLayout | undefined,
): BoardLayout[] {
  if (best === undefined) return [];
  const laid = laidFrom(problem, best.space, best.laid);
  const joints = best.space.objectives.findIndex(({ name }) => name === 'joints');
  // The fewest of those with the fewest short pieces are not the fewest of all.
  const jointsFirst = best.space.objectives.slice(0, joints).every(({ name }) => name === 'boards');
  const jointsProven = jointsFirst && best.proven[joints];
  const layout = layoutFrom(problem, { laid, bound, jointsProven, certificate: certificateOf(proofs) });
  const { boardsBought, reasons } = layout;
  if (boardsBought <= fewest) return [layout];
  const ofBound = boundReason(fewest, bound, boundedRows(problem));
  return [{ ...layout, reasons: [...reasons.slice(0, -1), moreReason(boardsBought, fewest), ofBound] }];
}

function measuresOf({ boardsBought, endJoints, cuts, findings }: BoardLayout): number[] {
  return [boardsBought, endJoints, findings.filter(({ code }) => code === 'piece-below-preferred').length, cuts];
}

/** Those that no other is at least as good as in everything; of equal ones the first. */
function undominated(layouts: readonly BoardLayout[]): BoardLayout[] {
  const judged = layouts.map((layout) => ({ layout, measures: measuresOf(layout) }));
  return judged
    .filter(({ measures }, at) =>
      judged.every((other, index) => {
        if (index === at || !other.measures.every((each, k) => each <= measures[k])) return true;
        const same = other.measures.every((each, k) => each === measures[k]);
        return same && at < index;
      }),
    )
    .sort((a, b) => a.measures[0] - b.measures[0] || a.measures[1] - b.measures[1])
    .map(({ layout }) => layout);
}
