import { asNzs } from './asNzs.js';
import { din } from './din.js';
import { ircUs } from './ircUs.js';
import { nbcCanada } from './nbcCanada.js';
import type { RuleSet } from './ruleSet.js';
import { uk } from './uk.js';
import { ukOverSoundLining } from './ukOverSoundLining.js';

/** The rule sets that come with the library. */
export interface RuleSets {
  readonly uk: RuleSet;
  readonly ukOverSoundLining: RuleSet;
  readonly nbcCanada: RuleSet;
  readonly ircUs: RuleSet;
  readonly asNzs: RuleSet;
  readonly din: RuleSet;
}

/**
 * The rule sets that come with the library, one for each country or way of working. Each value in them names its standard,
 * edition and clause, and whether that was read, quoted by somebody else, common practice or from memory.
 *
 * @example
 * ```ts
 * import { ruleSets } from 'soffitwright';
 *
 * console.log(Object.keys(ruleSets).join(', '));
 * // uk, ukOverSoundLining, nbcCanada, ircUs, asNzs, din
 * console.log(ruleSets.uk.title);
 * // UK: warranty table, generic specification clauses, common practice
 * ```
 */
export const ruleSets: RuleSets = { uk, ukOverSoundLining, nbcCanada, ircUs, asNzs, din };
