import type { RuleKey, RuleSet } from './ruleSet.js';
import type { Source } from './source.js';

/** Values that replace those of a rule set, by key, in the rule's own unit. */
export type Overrides = { readonly [K in RuleKey]?: number | { readonly value: number; readonly source?: Source } };

/** Wherever `rules` is taken: a whole set, or overrides of `ruleSets.uk`. */
export type RulesInput = RuleSet | Overrides;
