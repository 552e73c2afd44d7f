import type { RuleSet } from '../rules/ruleSet.js';
import { lookUp, numberOf, type RuleValue } from '../rules/ruleValue.js';
import { commonPractice, type Source } from '../rules/source.js';
import { localAuthorityLimits, warrantyLimits } from '../rules/standards/notchesAndHoles.js';
import { snap } from '../survey/grid.js';

/** A greatest embedment, mm, and where it comes from. */
export interface Deepest {
  readonly value: number;
  readonly source: Source;
}

/** How far into the joist a point may go, mm, and by which rule. */
export function deepestEmbedment(rules: RuleSet, serviceDepth: number | undefined): Deepest {
  const { value, source } = lookUp(rules, 'fixing.maximumEmbedment') as RuleValue;
  const known = serviceDepth === undefined ? Infinity : serviceDepth - numberOf(rules, 'fixing.serviceMargin');
  const general = value ?? Infinity;
  return known < general ? { value: Math.max(0, known), source: commonPractice } : { value: general, source };
}

/** Bottom of the largest hole that may have been bored in a joist of this depth, less the margin, mm. */
export const lowestHole = (rules: RuleSet, joistDepth: number | undefined): number =>
  joistDepth === undefined
    ? Infinity
    : Math.max(0, snap(localAuthorityLimits(joistDepth).lowestHole - numberOf(rules, 'fixing.serviceMargin')));

/** Deepest notch that may have been cut in the underside of a joist of this depth, by whichever guidance allows more, mm. */
export const deepestNotch = (joistDepth: number): number =>
  snap(Math.max(localAuthorityLimits(joistDepth).notchDepth, warrantyLimits(joistDepth)?.notchDepth ?? 0));
