import type { TableClause } from './clause.js';
import { practiceRows } from './practice.js';
import { ruleFacts } from './ruleFacts.js';
import { RULE_KEYS, type Rule, type RuleKey, type RuleRow, type RuleSet } from './ruleSet.js';

type Rows = TableClause | readonly (TableClause | RuleRow)[];

/** Clauses of a rule set, by what they govern. */
export type SetClauses = Readonly<Partial<Record<RuleKey, Rows>>>;

/**
 * A rule set from the clauses of its standards; what they do not govern is as in `base`, or common practice. What is said about it
 * is asked for late, so that a bundle without the set carries none of it.
 */
export function ruleSetFrom(
  about: () => Pick<RuleSet, 'id' | 'title' | 'notes'>,
  clauses: SetClauses,
  base: () => SetClauses = () => ({}),
): RuleSet {
  const practice: Readonly<Partial<Record<RuleKey, readonly RuleRow[]>>> = practiceRows();
  const { id, title, notes } = about();
  const facts = ruleFacts();
  const all = { ...base(), ...clauses };
  const rowsOf = (key: RuleKey): readonly RuleRow[] => {
    const given = all[key];
    const rows =
      given === undefined
        ? practice[key]
        : (Array.isArray(given) ? given : [given]).flatMap((each: TableClause | RuleRow) =>
            'rows' in each ? each.rows : [each],
          );
    if (rows === undefined) throw new Error(`${id} has no ${key}`);
    return rows;
  };
  const rules = Object.fromEntries(RULE_KEYS.map((key): [RuleKey, Rule] => [key, { ...facts[key], rows: rowsOf(key) }]));
  return { id, title, ...(notes && { notes }), rules: rules as Record<RuleKey, Rule> };
}
