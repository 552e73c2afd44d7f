import { inOrderOfSeverity } from '../rules/finding.js';
import { admit } from '../survey/door.js';
import type { BoardLayout } from './boardLayout.js';
import { canBeCut } from './canBeCut.js';
import { describeLayout } from './describeLayout.js';
import { InfeasibleError } from './infeasibleError.js';
import type { Laid } from './laid.js';
import { lockedFindings } from './lockedFindings.js';
import { inOrder } from './measures.js';
import { placementFindings } from './placementFindings.js';
import { type PlacementProblem, placementProblem } from './placementProblem.js';
import { type PlacementRequest, placementRequestSchema } from './placementRequest.js';
import { reasonsFor } from './reasons.js';
import { whyInfeasible } from './relaxations.js';
import { boughtMeasures, boughtOf, fewestAtHand, searchAtHand } from './searchAtHand.js';
import type { Found } from './searchLayout.js';
import type { LayingRequest } from './standing.js';
import { withLocked } from './withLocked.js';

/**
 * Lays boards on a ceiling: rows across the joists, butt joints on joists and staggered, every piece cut from a board.
 *
 * @param request - room, joists, boards, and what a better layout is; all lengths in mm
 * @returns pieces with their places, boards with their cuts, the number of boards with a bound that no layout under these rules
 *   can be below, and what should be known about the layout
 * @throws InputError when a value is missing, unknown or out of range, or rows do not fit the room
 * @throws InfeasibleError when no layout meets the rules; each of its relaxations would be enough by itself
 * @example
 * ```ts
 * import { placeBoards, rectangle } from 'soffitwright';
 *
 * const { boardsBought, bound, endJoints, proven } = placeBoards({
 *   room: { outline: rectangle(3600, 3000) },
 *   joists: { direction: 'y', first: 25, spacing: 400, last: 3575, width: 47 },
 *   boards: [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
 * });
 * console.log(boardsBought, bound, endJoints, proven);
 * // 4 4 4 true
 * ```
 */
export function placeBoards(request: PlacementRequest): BoardLayout {
  admit(placementRequestSchema, request);
  return layBoards(request);
}

/** {@link placeBoards} without its door. */
export const layBoards = (request: LayingRequest): BoardLayout => judgedLayout(request).layout;

/** A layout, and the numbers by which its preference judges it, the first that differs deciding; smaller is better. */
export interface JudgedLayout {
  readonly layout: BoardLayout;
  readonly judged: readonly number[];
}

export function judgedLayout(request: LayingRequest): JudgedLayout {
  const wanted = placementProblem(request);
  const found = searchAtHand(wanted);
  const { laid } = found;
  if (laid === undefined) {
    const { findings, relaxations } = whyInfeasible(wanted);
    throw new InfeasibleError(findings, relaxations);
  }
  return { layout: layoutFrom(wanted, { ...found, laid }), judged: inOrder(boughtMeasures(laid), wanted.prefer) };
}

/** What a search found, told in full. */
export function layoutFrom(
  wanted: PlacementProblem,
  { laid, bound, jointsProven, certificate, why }: Found & { readonly laid: Laid },
): BoardLayout {
  const described = withLocked(wanted, laid, describeLayout(wanted, laid));
  const proven = bound === described.boardsBought;
  return {
    ...described,
    boardsAtMinimumLength: boardsAtMinimumLength(wanted, laid),
    bound,
    ...(described.cost !== undefined && { costBound: costBound(wanted.request, bound) }),
    proven,
    piecesProven: proven && jointsProven,
    ...(certificate !== undefined && { certificate }),
    reasons: reasonsFor(wanted, laid, bound, why),
    findings: inOrderOfSeverity([...lockedFindings(wanted, described), ...placementFindings(wanted, described)]),
  };
}

/** Steps of the search for the boards at their least length, where the pieces as laid cannot be cut from those. */
const STEPS_AT_MINIMUM = 20_000;

/** The number of boards when each comes as short as it may: the same where the pieces can be cut from such boards too. */
function boardsAtMinimumLength(wanted: PlacementProblem, laid: Laid): number | null {
  const stocks = wanted.stocks.map((stock) => ({ ...stock, length: stock.length - stock.lengthTolerance }));
  const request = { ...wanted.request, budget: Math.min(STEPS_AT_MINIMUM, wanted.request.budget ?? STEPS_AT_MINIMUM) };
  const short: PlacementProblem = { ...wanted, request, prefer: 'boards', stocks };
  if (boughtOf(laid) === laid.boards.length && canBeCut(short, laid)) return laid.boards.length;
  return fewestAtHand(short) ?? null;
}

const costBound = ({ boards }: PlacementRequest, bound: number): number =>
  bound === 0
    ? 0
    : Math.round(bound * Math.min(...boards.filter(({ atHand }) => !atHand).map(({ price }) => price ?? 0)) * 1e6) / 1e6;
