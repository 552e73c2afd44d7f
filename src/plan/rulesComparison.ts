import type { FixingCounts } from '../fixings/fixingCounts.js';
import type { FixingLength } from '../fixings/fixingLength.js';
import type { Requirement } from '../fixings/fixingRequirements.js';
import type { Finding } from '../rules/finding.js';
import type { RuleKey, Sense } from '../rules/ruleSet.js';

/** What one rule set would require for the ceiling. Lengths in mm. */
export interface RulesForCeiling {
  /** As given, or the id of the set. */
  readonly name: string;
  /** Title of the set. */
  readonly ruleSet: string;
  /** What to know before relying on the set. */
  readonly notes: readonly string[];
  /** Whether the widest bay is within the set's joist centres for this finish; `null`: it has no figure for the board. */
  readonly centresWithin: boolean | null;
  /** Of one whole board over joists as far apart as the widest bay. */
  readonly screws: FixingCounts;
  /** Screws of the whole ceiling, on the boards that the job's own rules lay; `null`: no layout was found. */
  readonly total: number | null;
  /** How long the screws must be; `null`: the set has no figure for the declared fire resistance. */
  readonly fixingLength: Omit<FixingLength, 'findings'> | null;
  /** Rule of thumb and rule side by side. */
  readonly words: string;
  /** Titles of rules whose values are from memory. */
  readonly fromMemory: readonly string[];
  /** In order of severity: what of the layout and its screws the set would not have, and what to know. */
  readonly findings: readonly Finding[];
}

/** One rule, as each of the sets has it. */
export interface ComparedRule {
  readonly key: RuleKey;
  /** In site words. */
  readonly title: string;
  readonly unit: string;
  readonly sense: Sense;
  /** In the order of the sets. */
  readonly values: readonly (Omit<Requirement, 'key' | 'title' | 'unit' | 'sense'> & { readonly name: string })[];
  /** Names of the sets that ask most: the least of "at most", the greatest of "at least"; empty where all ask the same. */
  readonly strictest: readonly string[];
}

/** What several rule sets would require for the same ceiling. */
export interface RulesComparison {
  /** The board, as in the job's first stock, and the widest bay between joists; mm. */
  readonly ceiling: {
    readonly board: string;
    readonly thickness: number;
    readonly width: number;
    readonly length: number;
    readonly centres: number;
  };
  readonly sets: readonly RulesForCeiling[];
  readonly rules: readonly ComparedRule[];
  /** Of the job, whatever the rules. */
  readonly findings: readonly Finding[];
}
