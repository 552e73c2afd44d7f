import type { RuleKey, RuleSet } from '../../rules/ruleSet.js';
import { lookUp, type RuleValue } from '../../rules/ruleValue.js';
import { toGrid } from '../../survey/grid.js';

/** A rule that depends on nothing, with its number in mm and in grid steps. */
export interface GivenRule {
  readonly limit: number;
  readonly steps: number;
  readonly source: RuleValue['source'];
}

export function givenRule(set: RuleSet, key: RuleKey): GivenRule {
  const { value, source } = lookUp(set, key) as RuleValue;
  return { limit: value as number, steps: toGrid(value as number), source };
}
