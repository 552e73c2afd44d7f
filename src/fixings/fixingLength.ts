import { type Finding, finding } from '../rules/finding.js';
import { memoryNote } from '../rules/memoryNote.js';
import type { Conditions, RuleSet } from '../rules/ruleSet.js';
import { lookUp, numberOf, type RuleValue } from '../rules/ruleValue.js';
import type { Source } from '../rules/source.js';
import { greatestDeviation, screwLengths } from '../rules/standards/din18182of1987.js';
import { rulesOf } from '../rules/withRules.js';
import { admit } from '../survey/door.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { problem, refuse } from '../survey/inputError.js';
import { deepestEmbedment, lowestHole } from './embedmentLimits.js';
import { type FixingLengthRequest, fixingLengthSchema, STOCK_LENGTHS } from './fixingLengthRequest.js';
import { belowPreferred, fireFindings, inHoleZone, noLength, scanNote, threadFindings, toleranceNote } from './lengthFindings.js';
import { unprobedThickness } from './unprobedThickness.js';

/** How long the screws must be, mm. */
export interface FixingLength {
  /** Shortest length that holds. */
  readonly minimum: number;
  readonly preferred: number;
  /** Longest length that stays below where services may run. */
  readonly maximum: number;
  /** Longest stock length within both limits; `null`: there is none. */
  readonly longest: number | null;
  /** Stock length to buy; `null`: none satisfies both limits. */
  readonly recommended: number | null;
  /** Into the joist with the recommended length, behind the thickest readings and with the screw as short as it may be. */
  readonly embedment: number | null;
  /** Of that, what is thread, where its length was given. */
  readonly threadInJoist?: number;
  /**
   * Where a screw may be shorter or longer than its nominal length: by how much, and the length that would be recommended if it
   * were not.
   */
  readonly tolerance?: { readonly value: number; readonly trueToLength: number | null };
  /** Without a probe hole: lengths for the thinnest and the thickest old ceiling that there may be; `null`: none serves it. */
  readonly range?: { readonly shortest: number | null; readonly longest: number | null };
  readonly findings: readonly Finding[];
}

/**
 * How long the screws must be: through the new boards, the packing and every layer of the old ceiling at its thickest, and
 * into the joist; but not so far that the point reaches where cables or pipes may run.
 *
 * The stock length is the shortest that gives the preferred embedment, if the upper limit allows, or else the least. The upper
 * limit is reckoned without the layers' tolerances, since the old ceiling may be no thicker than was read, and where the depth of
 * the joists is given it keeps below the lowest hole that may have been bored in them; where no stock length can, it is the
 * shortest that holds. It never says that a joist is clear of services: a notch may have been cut in its underside.
 *
 * A thicker layer moves all three limits by as much, and with the usual lengths under any old ceiling the stock length never
 * falls. With a stock of lengths closer together than the preferred embedment is above the least, it can, by less than that
 * difference: where the thinner stack has a length with the preferred embedment and the thicker one has none left below the upper
 * limit, the shortest that holds is taken, and `embedment-below-preferred` says so.
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
  admit(fixingLengthSchema, request);
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
  if (request.probed === false) return unprobedLength(request);
  const found = probedLength(request);
  const tolerance = toleranceOf(request);
  const { value } = tolerance;
  if (value === 0) return found;
  const trueToLength = probedLength({ ...request, lengthTolerance: 0 }).recommended;
  return {
    ...found,
    tolerance: { value, trueToLength },
    findings: [...found.findings, toleranceNote(tolerance, found, trueToLength)],
  };
}

/** How much a screw may be off its nominal length, mm, and who says so. */
const toleranceOf = ({ lengthTolerance = 0 }: Ruled): { readonly value: number; readonly source: Source } =>
  lengthTolerance === 'DIN 18182-2'
    ? { value: greatestDeviation(), source: screwLengths.clause.source }
    : { value: lengthTolerance, source: { standard: 'arithmetic on the values given', standing: 'derived' } };

function unprobedLength(request: Ruled): FixingLength {
  const { least, greatest } = unprobedThickness(request.lining);
  const [thin, thick] = [least, greatest].map((thickness) => probedLength({ ...request, lining: [thickness] }));
  return {
    minimum: thin.minimum,
    preferred: thick.preferred,
    maximum: thin.maximum,
    longest: null,
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
  const { rules, stock = STOCK_LENGTHS, threadLength, serviceDepth, joistDepth } = request;
  const given = conditionsOf(request);
  const { thinnest, thickest } = thicknessOf(request);
  const tolerance = toGrid(toleranceOf(request).value);
  const least = lookUp(rules, 'fixing.embedment', given) as RuleValue;
  const wanted = Math.max(numberOf(rules, 'fixing.preferredEmbedment', given), least.value as number);
  const minimum = thickest + toGrid(least.value as number) + tolerance;
  const preferred = thickest + toGrid(wanted) + tolerance;
  const longestAt = (depth: number): number => thinnest + toGrid(depth) - tolerance;
  const lengths = [...stock].map(toGrid).sort((a, b) => a - b);
  const shortest = (from: number, depth: number): number | undefined =>
    lengths.find((each) => each >= from && each <= longestAt(depth));
  const deepest = deepestEmbedment(rules, serviceDepth);
  const bored = Math.min(deepest.value, lowestHole(rules, joistDepth));
  const clear = shortest(preferred, bored) ?? shortest(minimum, bored);
  // Where a hole may be in the way whatever the length, no deeper than must be.
  const length = clear ?? shortest(minimum, deepest.value);
  const depth = clear === undefined ? deepest.value : bored;
  const into = (each: number): number => fromGrid(each - thickest - tolerance);
  const sizes = { lengths, minimum, maximum: longestAt(depth), thinnest, tolerance, into };
  const embedment = length === undefined ? null : into(length);
  return {
    minimum: fromGrid(minimum),
    preferred: fromGrid(preferred),
    maximum: fromGrid(longestAt(depth)),
    longest: length === undefined ? null : fromGrid(Math.max(...lengths.filter((each) => each <= longestAt(depth)))),
    recommended: length === undefined ? null : fromGrid(length),
    embedment,
    ...(threadLength !== undefined && embedment !== null && { threadInJoist: Math.min(embedment, threadLength) }),
    findings: [
      ...(length === undefined ? [noLength(sizes, least, deepest)] : []),
      ...(embedment !== null && toGrid(embedment) < toGrid(wanted) ? [belowPreferred(embedment, rules, given)] : []),
      ...(length !== undefined && clear === undefined ? [inHoleZone(fromGrid(length + tolerance - thinnest), bored)] : []),
      ...(embedment === null ? [] : threadFindings(threadLength, least)),
      ...fireFindings(rules, request.fireRating ?? 0),
      scanNote(depth, deepest, joistDepth),
      ...memoryNote(rules, ['fixing.embedment', 'fixing.preferredEmbedment', 'fixing.maximumEmbedment'], given),
    ],
  };
}

/** What a screw goes through before it reaches the joist, grid steps: as read, and with every layer as thick as it may be. */
function thicknessOf({ thicknesses, lining, packing = 0 }: Ruled): { readonly thinnest: number; readonly thickest: number } {
  const sum = (lengths: readonly number[]): number => lengths.reduce((total, each) => total + toGrid(each), 0);
  const readings = lining.map((layer) => (typeof layer === 'number' ? layer : layer.thickness));
  const thinnest = sum([...thicknesses, packing, ...readings]);
  return { thinnest, thickest: thinnest + sum(lining.map((layer) => (typeof layer === 'number' ? 0 : (layer.tolerance ?? 0)))) };
}

const conditionsOf = ({ fixing = 'screw', shank, fireRating, layer }: Omit<FixingLengthRequest, 'rules'>): Conditions => ({
  fixing,
  ...(shank && { shank }),
  ...(fireRating !== undefined && { fireRating }),
  ...(layer !== undefined && { layer }),
});
