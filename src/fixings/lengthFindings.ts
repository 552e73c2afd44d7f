import { type Finding, finding } from '../rules/finding.js';
import type { Conditions, RuleSet } from '../rules/ruleSet.js';
import { lookUp, type RuleValue } from '../rules/ruleValue.js';
import { fromGrid } from '../survey/grid.js';
import type { Deepest } from './embedmentLimits.js';

/** Lengths in grid steps. */
export interface Lengths {
  readonly lengths: readonly number[];
  readonly minimum: number;
  readonly maximum: number;
  readonly thinnest: number;
  readonly tolerance: number;
  readonly into: (length: number) => number;
}

/** Why no stock length serves: all are too short, or the first that holds goes too deep. */
export function noLength(
  { lengths, minimum, maximum, thinnest, tolerance, into }: Lengths,
  least: RuleValue,
  deepest: Deepest,
): Finding {
  const words = { minimum: fromGrid(minimum), maximum: fromGrid(maximum) };
  const holding = lengths.find((each) => each >= minimum);
  if (holding !== undefined) {
    const found = `Find a length of ${words.minimum} to ${words.maximum} mm, or thinner packing.`;
    return finding('embedment-deep', 'error', {
      value: fromGrid(holding + tolerance - thinnest),
      limit: deepest.value,
      unit: 'mm',
      source: deepest.source,
      words: { ...words, length: fromGrid(holding), remedy: minimum > maximum ? NO_ROOM : found },
    });
  }
  const longest = lengths[lengths.length - 1];
  return finding('embedment-short', 'error', {
    value: Math.max(0, into(longest)),
    limit: least.value as number,
    unit: 'mm',
    source: least.source,
    words: { ...words, length: fromGrid(longest) },
  });
}

const NO_ROOM =
  'Trace the services and isolate them, fix battens clear of them and board to those, or take down the old ceiling.';

export function belowPreferred(value: number, rules: RuleSet, given: Conditions): Finding {
  const rule = lookUp(rules, 'fixing.preferredEmbedment', given) as RuleValue;
  return finding('embedment-below-preferred', 'warning', { value, limit: rule.value as number, unit: 'mm', source: rule.source });
}

/** A declared rating that the rule set says nothing of rests on the evidence of a test. */
export function fireFindings(rules: RuleSet, fireRating: number): Finding[] {
  const ruled = rules.rules['fixing.embedment'].rows.some((row) => row.when?.fireRating !== undefined);
  return fireRating > 0 && !ruled
    ? [finding('fire-rating-unruled', 'warning', { value: fireRating, words: { set: rules.title } })]
    : [];
}
