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
  const row = rowFor(set, key, given);
  if (row === undefined) return undefined;
  const { unit, sense, level } = set.rules[key];
  const { value, range, source, note } = row;
  return { value, ...(range && { range }), unit, sense, level, source, ...(note && { note }) };
}

/** The row that serves these conditions best, or nothing where none does. */
export function rowFor(set: RuleSet, key: RuleKey, given: Conditions = {}): RuleRow | undefined {
  const { rows } = set.rules[key];
  const asked = STRICT.filter(
    (condition) => isAsked(given, condition) && rows.some((row) => row.when?.[condition] !== undefined),
  );
  let best: RuleRow | undefined;
  for (const row of rows) {
    if (!serves(row, given) || asked.some((condition) => row.when?.[condition] === undefined)) continue;
    if (best === undefined || closer(row, best)) best = row;
  }
  return best;
}

/**
 * Where a rule has rows for one of these and the job asks for it, only those rows serve: a fire rating that no row reaches, or a
 * wet finish that the table does not permit, has no value.
 */
const STRICT = ['fireRating', 'finish'] as const;

const isAsked = (given: Conditions, condition: (typeof STRICT)[number]): boolean =>
  condition === 'finish' ? given.finish === 'textured' : (given.fireRating ?? 0) > 0;

/** The number of a rule that always has one; for rules without conditions or with enough of them given. */
export function numberOf(set: RuleSet, key: RuleKey, given: Conditions = {}): number {
  const found = lookUp(set, key, given);
  if (found === undefined || found.value === null) throw new Error(`${key} has no number here`);
  return found.value;
}

/** The greatest that a limit allows: the inch size where the printed value is its metric name. */
export const greatestOf = ({ value, range }: RuleValue): number =>
  value === null ? Infinity : Math.max(value, range?.greatest ?? 0);

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
    if (key === 'fireRating') return have !== 0 && (have as number) <= (wanted as number);
    return have === wanted;
  });
}

/** Between rows that both serve: the one with more conditions, then the thicker board, the smaller centres, the lower rating. */
function closer(row: RuleRow, than: RuleRow): boolean {
  const [a, b] = [row.when ?? {}, than.when ?? {}];
  const count = Object.keys(a).length - Object.keys(b).length;
  if (count !== 0) return count > 0;
  if (a.boardThickness !== b.boardThickness) return (a.boardThickness ?? 0) > (b.boardThickness ?? 0);
  if (a.centres !== b.centres) return (a.centres ?? Infinity) < (b.centres ?? Infinity);
  return (a.fireRating ?? Infinity) < (b.fireRating ?? Infinity);
}

/** Conditions that every row asks for. */
const neededConditions = (set: RuleSet, key: RuleKey): (keyof Conditions)[] => {
  const [first, ...others] = set.rules[key].rows.map(({ when = {} }) => Object.keys(when) as (keyof Conditions)[]);
  return first.filter((condition) => others.every((row) => row.includes(condition)));
};
