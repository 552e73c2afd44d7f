import { admit } from '../survey/door.js';
import type { RuleKey, RuleRow } from './ruleSet.js';
import { ruleKeySchema } from './schemas.js';
import { admitRules, type RulesInput } from './withRules.js';

/**
 * All rows of one rule, with their sources.
 *
 * @param rules - a rule set, or overrides of `ruleSets.uk`
 * @param key - which rule
 * @throws InputError for a key that does not exist
 * @example
 * ```ts
 * import { ruleSets, ruleTable } from 'soffitwright';
 *
 * console.log(ruleTable(ruleSets.uk, 'fixing.field').map((row) => row.value));
 * // [ 230, 150 ]
 * ```
 */
export function ruleTable(rules: RulesInput, key: RuleKey): readonly RuleRow[] {
  const set = admitRules(rules);
  admit(ruleKeySchema, key, 'key');
  return set.rules[key].rows;
}
