import * as z from 'zod/mini';
import { attemptPlacement } from '../boards/attemptPlacement.js';
import type { PlacementAttempt } from '../boards/infeasibleError.js';
import { layBoards } from '../boards/placeBoards.js';
import { type Preference, preferenceSchema } from '../boards/preference.js';
import { rulesInputSchema } from '../rules/schemas.js';
import { type RulesInput, rulesOf } from '../rules/withRules.js';
import type { BoardStock } from '../survey/boardStock.js';
import { admit } from '../survey/door.js';
import type { JoistDescription } from '../survey/joist.js';
import type { Layer } from '../survey/layer.js';
import type { Room } from '../survey/room.js';
import { boardsSchema, joistDescriptionSchema, liningSchema, roomSchema } from '../survey/schemas.js';
import { type TakeOffOptions, takeOffOptionsSchema } from '../takeoff/takeOffOptions.js';
import type { CeilingPlan } from './ceilingPlan.js';
import { completeFixing, type FixingInputs, fixingInputs } from './fixCeiling.js';
import { completedLayers, type Layers, layersSchema } from './layers.js';
import { planAround } from './planAround.js';
import { settleJoists } from './settleJoists.js';

/** One ceiling to plan. Lengths in mm, masses in kg. */
export interface Job extends FixingInputs {
  readonly room: Room;
  readonly joists: JoistDescription;
  /** Layers of the old ceiling, room side first; may be empty. */
  readonly lining: readonly Layer[];
  /** One or several sizes of one thickness and edge. */
  readonly boards: readonly BoardStock[];
  /** A rule set, or overrides of `ruleSets.uk`. */
  readonly rules?: RulesInput;
  /** What a better layout is; `tradesperson` when not given. */
  readonly prefer?: Preference;
  /**
   * For two layers of new boards: `2`, or a list that describes the second, or both. The second is laid clear of the joints of
   * the first; both are in one order.
   */
  readonly layers?: Layers;
  /** Allowances, packs and coverages of the take-off. */
  readonly takeOff?: TakeOffOptions;
}

export const jobSchema: z.ZodMiniType<Job> = z.strictObject({
  room: roomSchema,
  joists: joistDescriptionSchema,
  lining: liningSchema,
  boards: boardsSchema,
  rules: z.optional(rulesInputSchema),
  prefer: z.optional(preferenceSchema),
  layers: z.optional(layersSchema),
  takeOff: z.optional(takeOffOptionsSchema),
  ...fixingInputs,
});

/**
 * Plans one ceiling whole: joists, boards and their cuts, screws, their length, what to buy, and what must be known before
 * anything is bought, cut or fixed.
 *
 * @param job - room, joists, layers of the old ceiling (room side first; may be empty), boards; lengths in mm, masses in kg/m2
 * @returns the plan: plain data, the same on every engine. Findings come in order of severity; under a `hold` nothing is to be
 *   bought, cut or fixed, and `meta.held` says so. A finding is advice on the numbers given, never a clearance
 * @throws InputError when a value is missing, unknown or out of range
 * @throws InfeasibleError when no layout meets the rules; each of its relaxations would be enough by itself
 * @example
 * ```ts
 * import { planCeiling, rectangle } from 'soffitwright';
 *
 * const plan = planCeiling({
 *   room: { outline: rectangle(3600, 3000) },
 *   joists: { direction: 'y', first: 25, spacing: 400, last: 3575, width: 50 },
 *   lining: [{ kind: 'texture', thickness: 3 }, { kind: 'plasterboard', thickness: 9.5 }],
 *   boards: [{ id: '1200 x 2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
 * });
 * console.log(plan.meta.held, plan.findings[0].code);
 * // true texture-untested
 * ```
 */
export function planCeiling(job: Job): CeilingPlan {
  admit(jobSchema, job);
  const { lining, prefer = 'tradesperson', takeOff } = job;
  const layers = job.layers === undefined ? undefined : completedLayers(job.layers, job.boards);
  const { boards, rowWidths } = layers?.[0] ?? { boards: job.boards, rowWidths: undefined };
  const rules = rulesOf(job.rules);
  const { parts, room, joists } = settleJoists(job.room, job.joists, rules);
  const fixing = completeFixing({ ...job, boards }, rules);
  const extras = { ...(takeOff && { takeOff }), ...(layers && { layers }) };
  const completed = { room, joists, lining, boards, rules, prefer, ...fixing, ...extras };
  const layout = layBoards({ room, joists, boards, rules, lining, prefer, ...(rowWidths && { rowWidths }) });
  return planAround(completed, parts, layout);
}

/**
 * {@link planCeiling} for callers that do not want exceptions: the plan, or the problems of the input, or what would make a
 * layout possible.
 *
 * @param job - as for `planCeiling`
 * @example
 * ```ts
 * import { rectangle, tryPlanCeiling } from 'soffitwright';
 *
 * const attempt = tryPlanCeiling({
 *   room: { outline: rectangle(3600, 3000) },
 *   joists: { direction: 'y', positions: [300, 3300], width: 50 },
 *   lining: [],
 *   boards: [{ id: '1200 x 2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
 * });
 * console.log(attempt.ok ? 'planned' : attempt.reason);
 * // infeasible
 * ```
 */
export const tryPlanCeiling = (job: Job): PlacementAttempt<CeilingPlan> => attemptPlacement(() => planCeiling(job));
