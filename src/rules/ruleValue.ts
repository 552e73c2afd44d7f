import * as z from 'zod/mini';
import { admit } from '../survey/door.js';
import { problem, refuse } from '../survey/inputError.js';
import type { Conditions, Level, RuleKey, RuleRow, RuleSet, Sense } from './ruleSet.js';
import { conditionsSchema, ruleKeySchema } from './schemas.js';
import type { Source } from './source.js';
import { admitRules, type RulesInput } from './withRules.js';

/** One value of a rule set. */
export interface RuleValue {
  /** In `unit`; `null` where the set has no limit. */
  readonly value: number | null;
  readonly range?: { readonly least: number; readonly greatest: number };
  readonly unit: string;
  readonly sense: Sense;
  readonly level: Level;
  readonly source: Source;
  readonly note?: string;
}

/**
 * One value of a rule set, for the conditions of the job.
 *
 * @param rules - a rule set, or overrides of `ruleSets.uk`
 * @param key - which rule
 * @param given - what the value depends on: lengths in mm, fire rating in minutes
 * @throws InputError when the value depends on a condition that was not given, or no row serves it
 * @example
 * ```ts
 * import { ruleSets, ruleValue } from 'soffitwright';
 *
 * const { value, level, source } = ruleValue(ruleSets.uk, 'support.centres', {
 *   boardThickness: 12.5,
 *   orientation: 'across',
 *   noggings: false,
 * });
 * console.log(value, level, source.standard, source.clause);
 * // 450 must NHBC Standards 9.2.4 table 5
 * ```
 */
export function ruleValue(rules: RulesInput, key: RuleKey, given: Conditions = {}): RuleValue {
  const set = admitRules(rules);
  admit(ruleKeySchema, key, 'key');
  admit(z.optional(conditionsSchema), given, 'given');
  const found = lookUp(set, key, given);
  if (found !== undefined) return found;
  const missing = neededConditions(set, key).filter((condition) => given[condition] === undefined);
  return refuse(
    ...(missing.length > 0
      ? missing.map((condition) =>
          problem('condition-missing', `given.${condition}`, `a value, since ${key} depends on it`, 'nothing'),
        )
      : [problem('no-such-row', 'given', `conditions that a row of ${key} serves`, JSON.stringify(given))]),
  );
}

/** The value for these conditions, or nothing where no row serves them. The input has passed its door. */
export function lookUp(set: RuleSet, key: RuleKey, given: Conditions = {}): RuleValue | undefined {
  const { unit, sense, level, rows } = set.rules[key];
  let best: RuleRow | undefined;
  for (const row of rows) if (serves(row, given) && (best === undefined || closer(row, best))) best = row;
  if (best === undefined) return undefined;
  const { value, range, source, note } = best;
  return { value, ...(range && { range }), unit, sense, level, source, ...(note && { note }) };
}

/** The number of a rule that always has one; for rules without conditions or with enough of them given. */
export function numberOf(set: RuleSet, key: RuleKey, given: Conditions = {}): number {
  const found = lookUp(set, key, given);
  if (found === undefined || found.value === null) throw new Error(`${key} has no number here`);
  return found.value;
}

/** Inch sizes and their metric names are the same row: 400 and 406, 600 and 610, 12.5 and 12.7 differ by less than this share. */
const SAME_SIZE = 0.02;

function serves(row: RuleRow, given: Conditions): boolean {
  const when = row.when ?? {};
  return (Object.keys(when) as (keyof Conditions)[]).every((key) => {
    const wanted = when[key];
    const have = given[key];
    if (have === undefined) return false;
    if (key === 'boardThickness') return (have as number) >= (wanted as number) * (1 - SAME_SIZE);
    if (key === 'centres') return (have as number) <= (wanted as number) * (1 + SAME_SIZE);
    return have === wanted;
  });
}

/** Between rows that both serve: the one with more conditions, then the thicker board, then the smaller centres. */
function closer(row: RuleRow, than: RuleRow): boolean {
  const [a, b] = [row.when ?? {}, than.when ?? {}];
  const count = Object.keys(a).length - Object.keys(b).length;
  if (count !== 0) return count > 0;
  if (a.boardThickness !== b.boardThickness) return (a.boardThickness ?? 0) > (b.boardThickness ?? 0);
  return (a.centres ?? Infinity) < (b.centres ?? Infinity);
}

const neededConditions = (set: RuleSet, key: RuleKey): (keyof Conditions)[] => [
  ...new Set(set.rules[key].rows.flatMap((row) => Object.keys(row.when ?? {}) as (keyof Conditions)[])),
];
