import type { Finding } from '../rules/finding.js';
import { memoryNote } from '../rules/memoryNote.js';
import { RULE_KEYS, type RuleKey, type RuleSet } from '../rules/ruleSet.js';

/** Rules that a layout leans on; screws and movement joints say themselves what they lean on. */
const isOfLayout = (key: RuleKey): boolean => !key.startsWith('fixing.') && key !== 'movementJoint.maximumRun';

/** Says which rules of the layout rest on values from memory. */
export const rememberedRules = (rules: RuleSet, boardThickness: number): Finding[] =>
  memoryNote(rules, RULE_KEYS.filter(isOfLayout), { boardThickness, orientation: 'across', noggings: false });
