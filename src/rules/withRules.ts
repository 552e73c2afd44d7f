import { admit } from '../survey/door.js';
import type { Rule, RuleKey, RuleSet } from './ruleSet.js';
import type { Overrides, RulesInput } from './rulesInput.js';
import { overridesSchema, ruleSetSchema, rulesInputSchema } from './schemas.js';
import type { Source } from './source.js';
import { uk } from './uk.js';

export type { Overrides, RulesInput } from './rulesInput.js';

const callersOwn: Source = { standard: "the caller's own value", standing: 'practice' };

/**
 * A rule set in which some values are replaced. The set it starts from is untouched, and nothing is kept anywhere else. A
 * replaced value holds whatever the conditions, and its range goes with the old value.
 *
 * @param base - a rule set
 * @param overrides - by key, a number in the rule's unit, or `{ value, source }`
 * @returns a new rule set
 * @throws InputError for a key that does not exist or a value that is not a finite number of 0 or more
 * @example
 * ```ts
 * import { ruleSets, ruleValue, withRules } from 'soffitwright';
 *
 * const mine = withRules(ruleSets.uk, { 'stagger.minimum': 400 });
 * console.log(ruleValue(mine, 'stagger.minimum').value, ruleValue(ruleSets.uk, 'stagger.minimum').value);
 * // 400 300
 * ```
 */
export function withRules(base: RuleSet, overrides: Overrides): RuleSet {
  admit(ruleSetSchema, base, 'base');
  admit(overridesSchema, overrides, 'overrides');
  return replaced(base, overrides);
}

/** The rule set that an input means. The input has passed its door. */
export const rulesOf = (rules: RulesInput | undefined): RuleSet =>
  rules === undefined ? uk : isRuleSet(rules) ? rules : replaced(uk, rules);

export const isRuleSet = (rules: RulesInput): rules is RuleSet => 'rules' in rules;

function replaced(base: RuleSet, overrides: Overrides): RuleSet {
  const keys = (Object.keys(overrides) as RuleKey[]).filter((key) => overrides[key] !== undefined);
  if (keys.length === 0) return base;
  const rules: Record<RuleKey, Rule> = { ...base.rules };
  for (const key of keys) {
    const given = overrides[key] as number | { value: number; source?: Source };
    const { value, source = callersOwn } = typeof given === 'number' ? { value: given } : given;
    rules[key] = { ...base.rules[key], rows: [{ value, source }] };
  }
  return {
    id: `${base.id}, changed`,
    title: `${base.title}; changed by the caller: ${keys.sort((a, b) => (a < b ? -1 : 1)).join(', ')}`,
    rules,
  };
}

/** Checks rules that were passed on their own. */
export const admitRules = (rules: RulesInput | undefined): RuleSet => {
  if (rules !== undefined) admit(rulesInputSchema, rules, 'rules');
  return rulesOf(rules);
};
