import { type Finding, finding } from './finding.js';
import type { Conditions, RuleKey, RuleSet } from './ruleSet.js';
import { lookUp } from './ruleValue.js';

/** Says which of these rules rest on a value that is only remembered: nobody has read it in its standard or in a copy. */
export function memoryNote(rules: RuleSet, keys: readonly RuleKey[], given: Conditions = {}): Finding[] {
  const remembered = keys.filter((key) => (lookUp(rules, key, given) ?? lookUp(rules, key))?.source.standing === 'memory');
  if (remembered.length === 0) return [];
  const titles = remembered.map((key) => rules.rules[key].title);
  return [finding('rule-from-memory', 'note', { words: { set: rules.title, titles: titles.join('; ') } })];
}
