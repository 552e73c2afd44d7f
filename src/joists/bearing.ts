import * as z from 'zod/mini';
import type { RuleSet } from '../rules/ruleSet.js';
import { numberOf } from '../rules/ruleValue.js';
import { rulesInputSchema } from '../rules/schemas.js';
import { type RulesInput, rulesOf } from '../rules/withRules.js';
import { admit } from '../survey/door.js';
import { snap } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import type { Point } from '../survey/point.js';
import { coordinate, joistSchema, notNegative, pointSchema } from '../survey/schemas.js';
import { directionOf } from './frame.js';
import { normalWithin } from './normal.js';

/** Timber under each side of an end joint below which the end hangs on nothing, mm; common practice, no source. */
export const LEAST_TIMBER = 10;
/** How sure a bearing must be to be called secure; common practice, no source. */
export const SURE = 0.95;

/**
 * - `secure`: within the edge rules, and known well enough to rely on it
 * - `tight`: within them, less sure
 * - `short`: the edge rules are not met, but each side has timber
 * - `off`: less timber than a screw can use
 */
export type BearingOutcome = 'secure' | 'tight' | 'short' | 'off';

/** How an end joint sits on its joist. */
export interface Bearing {
  /** How far the joint may lie from the middle of the joist before an edge rule is broken, mm; negative on narrow timber. */
  readonly tolerance: number;
  /** How far it does lie from where the middle is believed to be, mm. */
  readonly offset: number;
  /** Probability that each side has at least 10 mm of timber. */
  readonly onTimber: number;
  /** Probability that the joist is within tolerance. */
  readonly withinEdgeRules: number;
  readonly outcome: BearingOutcome;
}

/** What {@link bearing} takes. */
export interface BearingRequest {
  readonly joist: Joist;
  /** Where the joint falls, plan coordinates in mm: a point, or the coordinate across the joists at mid-length. */
  readonly at: Point | number;
  /** Gap left between the boards, mm; the rule set's when not given. */
  readonly jointGap?: number;
  readonly rules?: RulesInput;
}

const requestSchema: z.ZodMiniType<BearingRequest> = z.strictObject({
  joist: joistSchema,
  at: z.union([coordinate, pointSchema]),
  jointGap: z.optional(notNegative),
  rules: z.optional(rulesInputSchema),
});

/**
 * How an end joint would sit on a joist.
 *
 * The tolerance is half of what the timber has to spare: `(width - gap) / 2` less the fixing's distance from the cut end and
 * from the edge of the timber. The joist's centre is taken as normally distributed about its line.
 *
 * @param request - joist, place of the joint (mm), gap (mm) and rules
 * @throws InputError when a value is missing, unknown or out of range
 * @example
 * ```ts
 * import { bearing, joistsFromPositions, rectangle } from 'soffitwright';
 *
 * const room = { outline: rectangle(3600, 3000) };
 * const [joist] = joistsFromPositions({ room, direction: 'y', positions: [1225], width: 50 });
 * const { tolerance, outcome } = bearing({ joist, at: 1225 });
 * console.log(tolerance, outcome);
 * // 4.5 secure
 * ```
 */
export function bearing(request: BearingRequest): Bearing {
  admit(requestSchema, request);
  const { joist, at, rules } = request;
  const set = rulesOf(rules);
  return bearingOf(joist, offsetFrom(joist, at), request.jointGap ?? numberOf(set, 'joint.gap'), set);
}

/** Distance of a point from a joist's centre line, square to it, mm. */
function offsetFrom(joist: Joist, at: Point | number): number {
  if (typeof at === 'number') return offsetFrom(joist, atMidLength(joist, at));
  const along = { x: joist.end.x - joist.start.x, y: joist.end.y - joist.start.y };
  const length = Math.sqrt(along.x * along.x + along.y * along.y);
  if (length === 0) return Math.abs(at.x - joist.start.x) + Math.abs(at.y - joist.start.y);
  return Math.abs((at.x - joist.start.x) * along.y - (at.y - joist.start.y) * along.x) / length;
}

function atMidLength(joist: Joist, across: number): Point {
  const middle = { x: (joist.start.x + joist.end.x) / 2, y: (joist.start.y + joist.end.y) / 2 };
  return directionOf([joist]) === 'y' ? { x: across, y: middle.y } : { x: middle.x, y: across };
}

/** The bearing of an end joint that lies this far from the middle of its joist. */
export function bearingOf(joist: Joist, offset: number, jointGap: number, rules: RuleSet): Bearing {
  const edges = numberOf(rules, 'fixing.cutEdgeDistance') + numberOf(rules, 'fixing.timberEdgeDistance');
  const half = (joist.width - jointGap) / 2;
  const tolerance = snap(half - edges);
  const reach = snap(half - LEAST_TIMBER);
  const away = snap(Math.abs(offset));
  const within = (limit: number): number => joist.presence * normalWithin(away, joist.sd, limit);
  const withinEdgeRules = within(tolerance);
  return {
    tolerance,
    offset: away,
    onTimber: within(reach),
    withinEdgeRules,
    outcome: away > reach ? 'off' : away > tolerance ? 'short' : withinEdgeRules >= SURE ? 'secure' : 'tight',
  };
}
