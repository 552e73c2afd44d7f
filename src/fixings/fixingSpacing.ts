import * as z from 'zod/mini';
import type { Conditions, RuleKey, RuleSet } from '../rules/ruleSet.js';
import { lookUp } from '../rules/ruleValue.js';
import { rulesInputSchema } from '../rules/schemas.js';
import type { Source } from '../rules/source.js';
import { type RulesInput, rulesOf } from '../rules/withRules.js';
import { admit } from '../survey/door.js';

/** What {@link fixingSpacing} takes. */
export interface FixingSpacingRequest {
  readonly rules?: RulesInput;
  /** mm. */
  readonly boardThickness: number;
  /** Joist centres, mm. */
  readonly joistSpacing: number;
  /** Default `screw`. */
  readonly fixing?: 'screw' | 'nail';
}

/** The distances between fixings and from edges that the rules ask for, mm. */
export interface FixingSpacing {
  /** At most, along a joist in the middle of the board. */
  readonly field: number;
  /** At most, along a butt joint. */
  readonly boardEnd: number;
  /** At most, along the line nearest a wall that runs with the joists. */
  readonly perimeter: number;
  /** At least, from a bound edge. */
  readonly boundEdgeDistance: number;
  /** At least, from a cut edge or end. */
  readonly cutEdgeDistance: number;
  /** At least, from the edge of the timber. */
  readonly timberEdgeDistance: number;
  /** Where each value comes from. */
  readonly sources: Readonly<Record<FixingDistance, Source>>;
}

/** The distances of a {@link FixingSpacing}. */
export type FixingDistance = 'field' | 'boardEnd' | 'perimeter' | 'boundEdgeDistance' | 'cutEdgeDistance' | 'timberEdgeDistance';

const requestSchema: z.ZodMiniType<FixingSpacingRequest> = z.strictObject({
  rules: z.optional(rulesInputSchema),
  boardThickness: z.number().check(z.gt(0), z.lte(100)),
  joistSpacing: z.number().check(z.gt(0), z.lte(5000)),
  fixing: z.optional(z.enum(['screw', 'nail'])),
});

/**
 * How far apart the fixings may be, and how far from edges they must be.
 *
 * @param request - board thickness and joist centres in mm, kind of fixing, rules
 * @returns distances in mm, with the source of each
 * @throws InputError when a value is missing, unknown or out of range
 * @example
 * ```ts
 * import { fixingSpacing } from 'soffitwright';
 *
 * const { field, boardEnd, sources } = fixingSpacing({ boardThickness: 12.5, joistSpacing: 400 });
 * console.log(field, boardEnd, sources.field.clause);
 * // 230 150 K10 610, M20 610
 * ```
 */
export function fixingSpacing(request: FixingSpacingRequest): FixingSpacing {
  admit(requestSchema, request);
  const { rules, boardThickness, joistSpacing, fixing = 'screw' } = request;
  return spacingOf(rulesOf(rules), { boardThickness, centres: joistSpacing, fixing });
}

/** {@link fixingSpacing} without its door. */
export function spacingOf(rules: RuleSet, given: Conditions): FixingSpacing {
  const field = distance(rules, 'fixing.field', given);
  // What holds everywhere holds at ends too: a field spacing closer than the one for ends governs there.
  const closer = (key: RuleKey): Distance => {
    const there = distance(rules, key, given);
    return there.value <= field.value ? there : field;
  };
  const found: Record<FixingDistance, Distance> = {
    field,
    boardEnd: closer('fixing.boardEnd'),
    perimeter: closer('fixing.perimeter'),
    boundEdgeDistance: distance(rules, 'fixing.boundEdgeDistance', given),
    cutEdgeDistance: distance(rules, 'fixing.cutEdgeDistance', given),
    timberEdgeDistance: distance(rules, 'fixing.timberEdgeDistance', given),
  };
  const each = <T>(pick: (found: Distance) => T): Record<FixingDistance, T> =>
    Object.fromEntries(Object.entries(found).map(([name, value]) => [name, pick(value)])) as Record<FixingDistance, T>;
  return { ...each(({ value }) => value), sources: each(({ source }) => source) };
}

interface Distance {
  readonly value: number;
  readonly source: Source;
}

function distance(rules: RuleSet, key: RuleKey, given: Conditions): Distance {
  const found = lookUp(rules, key, given) ?? lookUp(rules, key);
  if (found === undefined || found.value === null) throw new Error(`${key} has no number here`);
  return { value: found.value, source: found.source };
}
