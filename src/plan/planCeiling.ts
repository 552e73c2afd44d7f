import * as z from 'zod/mini';
import { attemptPlacement } from '../boards/attemptPlacement.js';
import type { PlacementAttempt } from '../boards/infeasibleError.js';
import { layBoards } from '../boards/placeBoards.js';
import { type Preference, preferenceSchema } from '../boards/preference.js';
import { asbestosFindings } from '../decision/asbestosFindings.js';
import { locateJoists } from '../joists/locateJoists.js';
import { type Finding, inOrderOfSeverity } from '../rules/finding.js';
import { rulesInputSchema } from '../rules/schemas.js';
import { type RulesInput, rulesOf } from '../rules/withRules.js';
import type { BoardStock } from '../survey/boardStock.js';
import { admit } from '../survey/door.js';
import type { JoistDescription } from '../survey/joist.js';
import type { Layer } from '../survey/layer.js';
import type { Room } from '../survey/room.js';
import { boardsSchema, joistDescriptionSchema, liningSchema, roomSchema } from '../survey/schemas.js';
import { takeOffOf } from '../takeoff/takeOff.js';
import { type TakeOffOptions, takeOffOptionsSchema } from '../takeoff/takeOffOptions.js';
import { cautions } from './cautions.js';
import type { CeilingPlan } from './ceilingPlan.js';
import { certainty } from './certainty.js';
import { completeFixing, type FixingInputs, fixCeiling, fixingInputs } from './fixCeiling.js';
import { movementJoint } from './movementJoint.js';
import { rememberedRules } from './rememberedRules.js';
import { wetFinish } from './wetFinish.js';

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
  const { room, lining, boards, prefer = 'tradesperson', takeOff = {} } = job;
  const rules = rulesOf(job.rules);
  const located = locateJoists(room, job.joists, rules);
  const { joists, direction, inference } = located;
  const completed = { room, joists, lining, boards, rules, prefer, ...completeFixing(job, rules) };
  const layout = layBoards({ room, joists, boards, rules, lining, prefer });
  const { fixings, fixingLength, findings: screwFindings } = fixCeiling(completed, layout, located, rules);
  const { sureness, findings: probing } = certainty(layout, located, rules);
  const findings = inOrderOfSeverity([
    ...asbestosFindings(lining, fixings.count),
    // Before what the layout itself has to say: a drawing has room for the first few only.
    ...cautions({
      addedMass: boards[0].massPerArea,
      heaviestPiece: Math.max(...layout.pieces.map((piece) => piece.massKg)),
      liningGiven: lining.length > 0,
    }),
    ...located.findings,
    ...probing,
    ...layout.findings.map(asBinding),
    ...wetFinish({ thickness: boards[0].thickness, finish: completed.finish }, located, rules),
    ...rememberedRules(rules, boards[0].thickness),
    ...movementJoint([{ outline: room.outline, joists, direction }], layout.rows, rules),
    ...screwFindings,
  ]);
  const hold = findings.find((each) => each.severity === 'hold');
  const bought = takeOffOf({ room, layout, fixings, fixingLength, job: completed }, takeOff);
  return {
    job: completed,
    room,
    joists,
    ...(inference && { inference }),
    layout,
    fixings,
    fixingLength,
    takeOff: { ...bought, ...(hold && { hold: hold.message }) },
    ...sureness,
    findings,
    meta: { held: hold !== undefined, direction, ruleSet: rules.title },
  };
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

/** Laying boards over joists too far apart is a departure; planning a ceiling on them breaks the rule. */
const asBinding = (each: Finding): Finding => (each.code === 'support-centres-exceeded' ? { ...each, severity: 'error' } : each);
