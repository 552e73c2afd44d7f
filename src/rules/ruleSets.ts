import type { RuleSet } from './ruleSet.js';
import { uk } from './uk.js';

/**
 * The rule sets that come with the library.
 *
 * @example
 * ```ts
 * import { ruleSets } from 'soffitwright';
 *
 * console.log(ruleSets.uk.title);
 * // UK: warranty table, generic specification clauses, common practice
 * ```
 */
export const ruleSets: { readonly uk: RuleSet } = { uk };
