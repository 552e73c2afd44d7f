import * as z from 'zod/mini';
import { type Finding, finding } from '../rules/finding.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { lookUp, numberOf, type RuleValue } from '../rules/ruleValue.js';
import { rulesInputSchema } from '../rules/schemas.js';
import { commonPractice, type Source } from '../rules/source.js';
import { type RulesInput, rulesOf } from '../rules/withRules.js';
import { admit } from '../survey/door.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Layer } from '../survey/layer.js';
import { layerSchema } from '../survey/schemas.js';

/** Screw lengths that are commonly to be had, mm; common practice, no source. */
export const STOCK_LENGTHS: readonly number[] = [25, 32, 35, 38, 42, 45, 50, 55, 60, 65, 70, 75, 80, 90, 100];

/** What {@link fixingLength} takes; lengths in mm. */
export interface FixingLengthRequest {
  /** Of the new boards the screw goes through. */
  readonly thicknesses: readonly number[];
  /** The old ceiling: its layers, or their thicknesses, each at its thickest. */
  readonly lining: readonly (Layer | number)[];
  /** Packing between the old ceiling and the new board. Default 0. */
  readonly packing?: number;
  readonly rules?: RulesInput;
  /** Lengths to be had. */
  readonly stock?: readonly number[];
  /** How much a screw may be shorter or longer than its nominal length. Default 0. */
  readonly lengthTolerance?: number;
  /** From the underside of the joist to the lowest pipe or cable known in it. */
  readonly serviceDepth?: number;
}

/** How long the screws must be, mm. */
export interface FixingLength {
  /** Shortest length that holds. */
  readonly minimum: number;
  readonly preferred: number;
  /** Longest length that stays below where services may run. */
  readonly maximum: number;
  /** Stock length to buy; `null`: none satisfies both limits. */
  readonly recommended: number | null;
  /** Into the joist with the recommended length, behind the thickest readings and with the screw as short as it may be. */
  readonly embedment: number | null;
  readonly findings: readonly Finding[];
}

const length = z.number().check(z.gte(0), z.lte(500));

const requestSchema: z.ZodMiniType<FixingLengthRequest> = z.strictObject({
  thicknesses: z.array(z.number().check(z.gt(0), z.lte(100))).check(z.minLength(1), z.maxLength(9)),
  lining: z.array(z.union([length, layerSchema])).check(z.maxLength(50)),
  packing: z.optional(length),
  rules: z.optional(rulesInputSchema),
  stock: z.optional(z.array(z.number().check(z.gt(0), z.lte(500))).check(z.minLength(1), z.maxLength(200))),
  lengthTolerance: z.optional(z.number().check(z.gte(0), z.lte(20))),
  serviceDepth: z.optional(length),
});

/**
 * How long the screws must be: through the new boards, the packing and every layer of the old ceiling at its thickest, and
 * into the joist; but not so far that the point reaches where cables or pipes may run.
 *
 * The stock length is the shortest that gives the preferred embedment, if the upper limit allows, or else the least. The upper
 * limit is reckoned without the layers' tolerances, since the old ceiling may be no thicker than was read. It never says that a
 * joist is clear of services: a notch may have been cut in its underside.
 *
 * @param request - thicknesses, readings and lengths in mm
 * @returns lengths in mm, and what to do where no length serves
 * @throws InputError when a value is missing, unknown or out of range
 * @example
 * ```ts
 * import { fixingLength } from 'soffitwright';
 *
 * const { recommended, embedment } = fixingLength({ thicknesses: [12.5], lining: [{ kind: 'lath-and-plaster', thickness: 28 }] });
 * console.log(recommended, embedment);
 * // 75 34.5
 * ```
 */
export function fixingLength(request: FixingLengthRequest): FixingLength {
  admit(requestSchema, request);
  return lengthOfFixings({ ...request, rules: rulesOf(request.rules) });
}

/** {@link fixingLength} without its door. */
export function lengthOfFixings(request: Omit<FixingLengthRequest, 'rules'> & { readonly rules: RuleSet }): FixingLength {
  const { thicknesses, lining, packing = 0, rules, stock = STOCK_LENGTHS, lengthTolerance = 0, serviceDepth } = request;
  const sum = (lengths: readonly number[]): number => lengths.reduce((total, each) => total + toGrid(each), 0);
  const thinnest = sum([
    ...thicknesses,
    packing,
    ...lining.map((layer) => (typeof layer === 'number' ? layer : layer.thickness)),
  ]);
  const thickest = thinnest + sum(lining.map((layer) => (typeof layer === 'number' ? 0 : (layer.tolerance ?? 0))));
  const tolerance = toGrid(lengthTolerance);
  const least = numberOf(rules, 'fixing.embedment');
  const deepest = deepestEmbedment(rules, serviceDepth);
  const minimum = thickest + toGrid(least) + tolerance;
  const preferred = thickest + Math.max(toGrid(numberOf(rules, 'fixing.preferredEmbedment')), toGrid(least)) + tolerance;
  const maximum = thinnest + toGrid(deepest.value) - tolerance;
  const lengths = [...stock].map(toGrid).sort((a, b) => a - b);
  const within = (from: number): number | undefined => lengths.find((each) => each >= from && each <= maximum);
  const recommended = within(preferred) ?? within(minimum) ?? null;
  const into = (each: number): number => fromGrid(each - thickest - tolerance);
  return {
    minimum: fromGrid(minimum),
    preferred: fromGrid(preferred),
    maximum: fromGrid(maximum),
    recommended: recommended === null ? null : fromGrid(recommended),
    embedment: recommended === null ? null : into(recommended),
    findings: [
      ...(recommended === null
        ? [noLength({ lengths, minimum, maximum, thinnest, tolerance, into }, rules, deepest)]
        : recommended < preferred
          ? [belowPreferred(into(recommended), rules)]
          : []),
      finding('scan-for-services', 'note', { limit: deepest.value, unit: 'mm', source: deepest.source }),
    ],
  };
}

/** How far into the joist a point may go, mm, and by which rule. */
function deepestEmbedment(rules: RuleSet, serviceDepth: number | undefined): { value: number; source: Source } {
  const { value, source } = lookUp(rules, 'fixing.maximumEmbedment') as RuleValue;
  const known = serviceDepth === undefined ? Infinity : serviceDepth - numberOf(rules, 'fixing.serviceMargin');
  const general = value ?? Infinity;
  return known < general ? { value: Math.max(0, known), source: commonPractice } : { value: general, source };
}

interface Lengths {
  readonly lengths: readonly number[];
  readonly minimum: number;
  readonly maximum: number;
  readonly thinnest: number;
  readonly tolerance: number;
  readonly into: (length: number) => number;
}

/** Why no stock length serves: all are too short, or the first that holds goes too deep. */
function noLength(
  { lengths, minimum, maximum, thinnest, tolerance, into }: Lengths,
  rules: RuleSet,
  deepest: { value: number; source: Source },
): Finding {
  const words = { minimum: fromGrid(minimum), maximum: fromGrid(maximum) };
  const holding = lengths.find((each) => each >= minimum);
  if (holding !== undefined) {
    return finding('embedment-deep', 'error', {
      value: fromGrid(holding + tolerance - thinnest),
      limit: deepest.value,
      unit: 'mm',
      source: deepest.source,
      words: {
        ...words,
        length: fromGrid(holding),
        remedy: minimum > maximum ? NO_ROOM : `Find a length of ${words.minimum} to ${words.maximum} mm, or thinner packing.`,
      },
    });
  }
  const { value, source } = lookUp(rules, 'fixing.embedment') as RuleValue;
  const longest = lengths[lengths.length - 1];
  return finding('embedment-short', 'error', {
    value: Math.max(0, into(longest)),
    limit: value as number,
    unit: 'mm',
    source,
    words: { ...words, length: fromGrid(longest) },
  });
}

const NO_ROOM =
  'Trace the services and isolate them, fix battens clear of them and board to those, or take down the old ceiling.';

function belowPreferred(value: number, rules: RuleSet): Finding {
  const rule = lookUp(rules, 'fixing.preferredEmbedment') as RuleValue;
  return finding('embedment-below-preferred', 'warning', { value, limit: rule.value as number, unit: 'mm', source: rule.source });
}
