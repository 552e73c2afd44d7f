import { attemptPlacement } from '../boards/attemptPlacement.js';
import { openedBoards, type SoFar } from '../boards/boardsSoFar.js';
import type { PlacementAttempt } from '../boards/infeasibleError.js';
import { relayBoards } from '../boards/relayBoards.js';
import type { BoardStock } from '../survey/boardStock.js';
import { admit } from '../survey/door.js';
import { InputError, type Problem, problem } from '../survey/inputError.js';
import { LEAST_BOARD } from '../survey/schemas.js';
import type { CeilingPlan } from './ceilingPlan.js';
import { foundJoists } from './foundJoists.js';
import { planAround } from './planAround.js';
import { type PlanChange, planChanges } from './planChanges.js';
import { type OffcutAtHand, type Replanning, replannedPlanSchema, replanningSchema } from './replanRequest.js';
import { settleJoists } from './settleJoists.js';

/** A plan made again, and what differs. */
export interface ReplannedCeiling extends CeilingPlan {
  /** Every difference from the plan before: joists, pieces, boards. */
  readonly changed: readonly PlanChange[];
}

/**
 * Plans the rest of a ceiling when the job has turned out otherwise: pieces are up, a joist is not where it was planned, a board
 * broke, a size has run out. As little is changed as can be: pieces that are up stay; of the others, those that can stay keep
 * their place, length and name, and the board that they are cut from where that costs no board.
 *
 * Of the pieces that could stay as few as possible are given up: none, then every one of the nearest, then every two, then three,
 * in at most 150 tries; of the layouts that serve the one with the fewest ends on poor or unproven timber is taken, then with the
 * fewest changed pieces, then with the fewest boards. That nothing less would do is not proven: a short search looks for each, and
 * where the tries run out whole rows are given up.
 *
 * `boardsBought` and `boardsByStock` of the layout, and the take-off, count what has not been cut into yet; a board that pieces
 * which are up came from is in `boards` as `opened`, and the rest of it is used first.
 *
 * @param plan - a plan as `planCeiling` or this function returned it
 * @param changes - what has happened, by the ids of the plan; places and lengths in mm
 * @returns the plan of the whole ceiling, pieces that are up marked `locked`, and all that differs; a finding is advice on the
 *   numbers given, never a clearance
 * @throws InputError when an id is none of the plan's, a piece is said to be up and broken, or a value is missing or out of range
 * @throws InfeasibleError when the rest cannot be laid round what is up
 * @example
 * ```ts
 * import { planCeiling, rectangle, replanCeiling } from 'soffitwright';
 *
 * const plan = planCeiling({
 *   room: { outline: rectangle(3600, 3000) },
 *   joists: { direction: 'y', first: 25, spacing: 400, last: 3575, width: 50 },
 *   lining: [{ kind: 'plasterboard', thickness: 9.5 }],
 *   boards: [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
 * });
 * const fixed = plan.layout.pieces.filter(({ row }) => row === 1).map(({ id }) => id);
 * const { changed, layout } = replanCeiling(plan, { fixed, spoiled: ['B3'] });
 * for (const { message } of changed) console.log(message);
 * console.log(layout.boardsBought, 'boards not cut into yet');
 * // Piece 2.2 is cut from B5, not from B3.
 * // Nothing is cut from board B3.
 * // Board B5 is new: 2400.
 * // 2 boards not cut into yet
 * ```
 */
export function replanCeiling(plan: CeilingPlan, changes: Replanning = {}): ReplannedCeiling {
  admit(replannedPlanSchema, plan, 'plan');
  admit(replanningSchema, changes, 'changes');
  const { job, layout: before } = plan;
  const soFar = soFarOf(plan, changes);
  const isAsPlanned = changes.found === undefined && changes.missing === undefined;
  const { lining, rules, prefer } = job;
  const anew = foundJoists(settleJoists(job.room, job.joists, rules), changes);
  const { parts, room, joists } = settleJoists(anew.room, anew.joists, rules);
  const { inference } = plan;
  const inferred = new Set(inference?.joists.map(({ id }) => id));
  const located = parts.map((part) =>
    isAsPlanned && inference && part.joists.some(({ id }) => inferred.has(id)) ? { ...part, inference } : part,
  );
  const boards = boardsLeft(plan, changes, soFar);
  const layout = relayBoards({ room, joists, boards, rules, lining, prefer }, soFar);
  const replanned = planAround({ ...job, room, joists, boards }, located, layout);
  return { ...replanned, changed: planChanges({ joists: plan.joists, layout: before }, replanned) };
}

/**
 * {@link replanCeiling} for callers that do not want exceptions.
 *
 * @param plan - a plan as `planCeiling` or `replanCeiling` returned it
 * @param changes - as for `replanCeiling`
 * @example
 * ```ts
 * import { planCeiling, rectangle, tryReplanCeiling } from 'soffitwright';
 *
 * const plan = planCeiling({
 *   room: { outline: rectangle(2390, 1190) },
 *   joists: { direction: 'y', first: 45, spacing: 400, last: 2345, width: 47 },
 *   lining: [{ kind: 'plasterboard', thickness: 9.5 }],
 *   boards: [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
 * });
 * const attempt = tryReplanCeiling(plan, { fixed: ['1.9'] });
 * if (!attempt.ok && attempt.reason === 'input') console.log(attempt.problems[0].message);
 * // changes.fixed[0]: expected the id of a piece of the plan, received 1.9
 * ```
 */
export const tryReplanCeiling = (plan: CeilingPlan, changes: Replanning = {}): PlacementAttempt<ReplannedCeiling> =>
  attemptPlacement(() => replanCeiling(plan, changes));

function soFarOf({ layout: before }: CeilingPlan, { fixed = [], cut = [], spoiled = [] }: Replanning): SoFar {
  const pieces = new Set(before.pieces.map(({ id }) => id));
  const boards = new Set(before.boards.map(({ id }) => id));
  const problems: Problem[] = [];
  const strange = (list: readonly string[], path: string, isKnown: (id: string) => boolean, expected: string): void => {
    list.forEach((id, i) => {
      if (!isKnown(id)) problems.push(problem('piece-unknown', `changes.${path}[${i}]`, expected, id));
    });
  };
  strange(fixed, 'fixed', (id) => pieces.has(id), 'the id of a piece of the plan');
  strange(cut, 'cut', (id) => pieces.has(id), 'the id of a piece of the plan');
  strange(spoiled, 'spoiled', (id) => pieces.has(id) || boards.has(id), 'the id of a board or a piece of the plan');
  const broken = spoiled.filter((id) => pieces.has(id));
  // What was up before is up still.
  const up = new Set([...before.pieces.filter(({ locked }) => locked === true).map(({ id }) => id), ...fixed]);
  spoiled.forEach((id, i) => {
    if (up.has(id)) problems.push(problem('contradiction', `changes.spoiled[${i}]`, 'a piece that is not up', id));
  });
  if (problems.length > 0) throw new InputError(problems);
  return {
    before,
    up,
    cut: new Set(cut.filter((id) => !up.has(id) && !broken.includes(id))),
    broken: new Set(broken),
    lost: new Set(spoiled.filter((id) => boards.has(id) && !pieces.has(id))),
  };
}

/** What can still be had: of each stock as many as there are uncut, and what lies there. */
function boardsLeft(
  { job, layout }: CeilingPlan,
  { available = {}, offcutsAtHand = [] }: Replanning,
  soFar: SoFar,
): BoardStock[] {
  for (const id of Object.keys(available)) {
    if (!job.boards.some((board) => board.id === id)) {
      throw new InputError([problem('board-unknown', `changes.available.${id}`, 'the id of a board of the job', id)]);
    }
  }
  const opened = openedBoards(soFar);
  const cutInto = (stock: string): number =>
    layout.boards.filter((board) => board.stock === stock && board.opened !== true && opened.has(board.id)).length;
  const left = job.boards.map((board): BoardStock => {
    const { id, available: planned = board.atHand ? 1 : undefined } = board;
    const now = available[id] ?? (planned === undefined ? undefined : Math.max(0, planned - cutInto(id)));
    return { ...board, ...(now !== undefined && { available: now }) };
  });
  return [...left, ...asStock(job.boards, offcutsAtHand)];
}

/** Offcuts that something can be cut from as stock of the job's board, under ids that no other stock has. */
function asStock(boards: readonly BoardStock[], offcuts: readonly OffcutAtHand[]): BoardStock[] {
  const { thickness, massPerArea, edge, kerf } = boards[0];
  const taken = new Set(boards.map(({ id }) => id));
  const large = offcuts.filter(({ length, width }) => length >= LEAST_BOARD.length && width >= LEAST_BOARD.width);
  return large.map(({ id, length, width }) => {
    const name = id ?? `offcut ${length} x ${width}`;
    let free = name;
    for (let count = 2; taken.has(free); count++) free = `${name} (${count})`;
    taken.add(free);
    return {
      id: free,
      length,
      width,
      thickness,
      massPerArea,
      edge,
      ...(kerf !== undefined && { kerf }),
      atHand: true,
      available: 1,
    };
  });
}
