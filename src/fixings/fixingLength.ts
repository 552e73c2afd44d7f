import * as z from 'zod/mini';
import { type Finding, finding } from '../rules/finding.js';
import { memoryNote } from '../rules/memoryNote.js';
import type { Conditions, RuleSet } from '../rules/ruleSet.js';
import { lookUp, numberOf, type RuleValue } from '../rules/ruleValue.js';
import { rulesInputSchema } from '../rules/schemas.js';
import { greatestDeviation } from '../rules/standards/din18182of1987.js';
import { type RulesInput, rulesOf } from '../rules/withRules.js';
import { admit } from '../survey/door.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { problem, refuse } from '../survey/inputError.js';
import type { Layer } from '../survey/layer.js';
import { layerSchema } from '../survey/schemas.js';
import { deepestEmbedment, lowestHole } from './embedmentLimits.js';
import { belowPreferred, fireFindings, noLength } from './lengthFindings.js';
import { unprobedThickness } from './unprobedThickness.js';

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
  /**
   * How much a screw may be shorter or longer than its nominal length; `'DIN 18182-2'`: the most that its table of 1987 lets a
   * screw be, 1.5. Default 0.
   */
  readonly lengthTolerance?: number | 'DIN 18182-2';
  /** From the underside of the joist to the lowest pipe or cable known in it. */
  readonly serviceDepth?: number;
  /** Of the joists: shallow ones may have holes nearer their underside than cables keep. */
  readonly joistDepth?: number;
  /** Default `screw`. */
  readonly fixing?: 'screw' | 'nail';
  /** Of a nail. Default ringed. */
  readonly shank?: 'smooth' | 'ringed';
  /** Minutes of fire resistance that the ceiling is declared to have. */
  readonly fireRating?: number;
  /** 1 for the board next to the old ceiling, 2 for the one under it: each reaches the joist. Default 1. */
  readonly layer?: number;
  /** Of the screw, from its point. */
  readonly threadLength?: number;
  /** `false`: no probe hole shows how thick the old ceiling is, and there is only a range of lengths. Default true. */
  readonly probed?: boolean;
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
  /** Of that, what is thread, where its length was given. */
  readonly threadInJoist?: number;
  /** Without a probe hole: lengths for the thinnest and the thickest old ceiling that there may be; `null`: none serves it. */
  readonly range?: { readonly shortest: number | null; readonly longest: number | null };
  readonly findings: readonly Finding[];
}

const length = z.number().check(z.gte(0), z.lte(500));

/** What is said of the screws themselves. */
const screwFields = {
  stock: z.optional(z.array(z.number().check(z.gt(0), z.lte(500))).check(z.minLength(1), z.maxLength(200))),
  lengthTolerance: z.optional(z.union([z.number().check(z.gte(0), z.lte(20)), z.literal('DIN 18182-2')])),
  threadLength: z.optional(z.number().check(z.gt(0), z.lte(500))),
};

export const screwsSchema: z.ZodMiniType<Pick<FixingLengthRequest, keyof typeof screwFields>> = z.strictObject(screwFields);

const requestSchema: z.ZodMiniType<FixingLengthRequest> = z.strictObject({
  thicknesses: z.array(z.number().check(z.gt(0), z.lte(100))).check(z.minLength(1), z.maxLength(9)),
  lining: z.array(z.union([length, layerSchema])).check(z.maxLength(50)),
  packing: z.optional(length),
  rules: z.optional(rulesInputSchema),
  ...screwFields,
  serviceDepth: z.optional(length),
  joistDepth: z.optional(z.number().check(z.gte(20), z.lte(2000))),
  fixing: z.optional(z.enum(['screw', 'nail'])),
  shank: z.optional(z.enum(['smooth', 'ringed'])),
  fireRating: z.optional(z.number().check(z.gte(0), z.lte(600))),
  layer: z.optional(z.int().check(z.gte(1), z.lte(9))),
  probed: z.optional(z.boolean()),
});

/**
 * How long the screws must be: through the new boards, the packing and every layer of the old ceiling at its thickest, and
 * into the joist; but not so far that the point reaches where cables or pipes may run.
 *
 * The stock length is the shortest that gives the preferred embedment, if the upper limit allows, or else the least. The upper
 * limit is reckoned without the layers' tolerances, since the old ceiling may be no thicker than was read, and where the depth of
 * the joists is given it keeps below the lowest hole that may have been bored in them, if any stock length can. It never says
 * that a joist is clear of services: a notch may have been cut in its underside.
 *
 * @param request - thicknesses, readings and lengths in mm
 * @returns lengths in mm, and what to do where no length serves
 * @throws InputError when a value is missing, unknown or out of range, or the rules have no embedment for the fire rating
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
  const ruled = { ...request, rules: rulesOf(request.rules) };
  demandEmbedment(ruled);
  return lengthOfFixings(ruled);
}

type Ruled = Omit<FixingLengthRequest, 'rules'> & { readonly rules: RuleSet };

/** Refuses a fire rating that the rules have no embedment for. */
export function demandEmbedment(request: Ruled): void {
  const { rules, fireRating } = request;
  if (lookUp(rules, 'fixing.embedment', conditionsOf(request)) === undefined) {
    refuse(problem('no-such-row', 'fireRating', `a rating that ${rules.title} has an embedment for`, `${fireRating}`));
  }
}

/** {@link fixingLength} without its door. */
export function lengthOfFixings(request: Ruled): FixingLength {
  if (request.probed !== false) return probedLength(request);
  const { least, greatest } = unprobedThickness(request.lining);
  const [thin, thick] = [least, greatest].map((thickness) => probedLength({ ...request, lining: [thickness] }));
  return {
    minimum: thin.minimum,
    preferred: thick.preferred,
    maximum: thin.maximum,
    recommended: null,
    embedment: null,
    range: { shortest: thin.recommended, longest: thick.recommended },
    findings: [
      finding('lining-not-probed', 'warning', {
        words: { least, greatest, shortest: thin.recommended ?? 'none', longest: thick.recommended ?? 'none' },
      }),
      ...thin.findings.filter(({ code }) => ALWAYS.includes(code)),
    ],
  };
}

/** Findings that hold whatever the length. */
const ALWAYS: readonly string[] = ['scan-for-services', 'fire-rating-unruled', 'rule-from-memory'];

function probedLength(request: Ruled): FixingLength {
  const { thicknesses, lining, packing = 0, rules, stock = STOCK_LENGTHS, lengthTolerance = 0, fireRating = 0 } = request;
  const { threadLength, serviceDepth, joistDepth } = request;
  const given = conditionsOf(request);
  const sum = (lengths: readonly number[]): number => lengths.reduce((total, each) => total + toGrid(each), 0);
  const thinnest = sum([
    ...thicknesses,
    packing,
    ...lining.map((layer) => (typeof layer === 'number' ? layer : layer.thickness)),
  ]);
  const thickest = thinnest + sum(lining.map((layer) => (typeof layer === 'number' ? 0 : (layer.tolerance ?? 0))));
  const tolerance = toGrid(lengthTolerance === 'DIN 18182-2' ? greatestDeviation() : lengthTolerance);
  const least = lookUp(rules, 'fixing.embedment', given) as RuleValue;
  const wanted = Math.max(numberOf(rules, 'fixing.preferredEmbedment', given), least.value as number);
  const minimum = thickest + toGrid(least.value as number) + tolerance;
  const preferred = thickest + toGrid(wanted) + tolerance;
  const longestAt = (depth: number): number => thinnest + toGrid(depth) - tolerance;
  const lengths = [...stock].map(toGrid).sort((a, b) => a - b);
  const pick = (depth: number): number | undefined => {
    const within = (from: number): number | undefined => lengths.find((each) => each >= from && each <= longestAt(depth));
    return within(preferred) ?? within(minimum);
  };
  const deepest = deepestEmbedment(rules, serviceDepth);
  const bored = Math.min(deepest.value, lowestHole(rules, joistDepth));
  const clear = pick(bored);
  const recommended = clear ?? pick(deepest.value) ?? null;
  const depth = clear === undefined ? deepest.value : bored;
  const into = (each: number): number => fromGrid(each - thickest - tolerance);
  const sizes = { lengths, minimum, maximum: longestAt(depth), thinnest, tolerance, into };
  const embedment = recommended === null ? null : into(recommended);
  return {
    minimum: fromGrid(minimum),
    preferred: fromGrid(preferred),
    maximum: fromGrid(longestAt(depth)),
    recommended: recommended === null ? null : fromGrid(recommended),
    embedment,
    ...(threadLength !== undefined && embedment !== null && { threadInJoist: Math.min(embedment, threadLength) }),
    findings: [
      ...(recommended === null ? [noLength(sizes, least, deepest)] : []),
      ...(embedment !== null && toGrid(embedment) < toGrid(wanted) ? [belowPreferred(embedment, rules, given)] : []),
      ...(recommended !== null && clear === undefined
        ? [
            finding('embedment-hole-zone', 'warning', {
              value: fromGrid(recommended + tolerance - thinnest),
              limit: bored,
              unit: 'mm',
            }),
          ]
        : []),
      ...(embedment !== null && threadLength !== undefined && threadLength < (least.value as number)
        ? [
            finding('thread-short', 'warning', {
              value: threadLength,
              limit: least.value as number,
              unit: 'mm',
              source: least.source,
            }),
          ]
        : []),
      ...fireFindings(rules, fireRating),
      finding('scan-for-services', 'note', { limit: depth, unit: 'mm', source: deepest.source }),
      ...memoryNote(rules, ['fixing.embedment', 'fixing.preferredEmbedment', 'fixing.maximumEmbedment'], given),
    ],
  };
}

const conditionsOf = ({ fixing = 'screw', shank, fireRating, layer }: Omit<FixingLengthRequest, 'rules'>): Conditions => ({
  fixing,
  ...(shank && { shank }),
  ...(fireRating !== undefined && { fireRating }),
  ...(layer !== undefined && { layer }),
});
