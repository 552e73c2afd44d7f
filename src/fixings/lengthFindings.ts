import { type Finding, finding } from '../rules/finding.js';
import type { Conditions, RuleSet } from '../rules/ruleSet.js';
import { lookUp, type RuleValue } from '../rules/ruleValue.js';
import type { Source } from '../rules/source.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { type Deepest, deepestNotch } from './embedmentLimits.js';

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

/** The screw is long enough only where a hole may have been bored. */
export const inHoleZone = (value: number, limit: number): Finding =>
  finding('embedment-hole-zone', 'warning', { value, limit, unit: 'mm' });

/** Thread too short to fill the least embedment. */
export function threadFindings(threadLength: number | undefined, { value, source }: RuleValue): Finding[] {
  const least = value as number;
  if (threadLength === undefined || toGrid(threadLength) >= toGrid(least)) return [];
  return [finding('thread-short', 'warning', { value: threadLength, limit: least, unit: 'mm', source })];
}

/** How deep is safe, and that nothing is: a notch may be cut in any joist. */
export const scanNote = (limit: number, { source }: Deepest, joistDepth: number | undefined): Finding =>
  finding('scan-for-services', 'note', {
    limit,
    unit: 'mm',
    source,
    ...(joistDepth !== undefined && {
      sentence: 'scan-for-services-notch',
      words: { depth: joistDepth, notch: deepestNotch(joistDepth) },
    }),
  });

/** What it costs that screws are not true to their length. */
export function toleranceNote(
  { value, source }: { readonly value: number; readonly source: Source },
  { recommended, embedment }: { readonly recommended: number | null; readonly embedment: number | null },
  trueToLength: number | null,
): Finding {
  const details = { value, unit: 'mm', source };
  if (recommended === null) return finding('screw-length-tolerance', 'note', { ...details, sentence: 'screw-length-none' });
  return finding('screw-length-tolerance', 'note', {
    ...details,
    words: { length: recommended, embedment: embedment ?? 0, without: trueToLength ?? recommended },
  });
}
