import type { RuleRow } from './ruleSet.js';
import type { Source } from './source.js';

/** One clause or table of one edition of a standard, and what it governs. */
export interface Clause {
  /** Short name that tests cite: `nhbc-2022-9.2.4-5`. */
  readonly id: string;
  readonly source: Source;
  /** In site words. */
  readonly governs: string;
}

/** A clause that is a table of values. */
export interface TableClause extends Clause {
  readonly rows: readonly RuleRow[];
}

/** A table whose rows all have the clause's source. */
export const table = (clause: Clause, rows: readonly Omit<RuleRow, 'source'>[]): TableClause => ({
  ...clause,
  rows: rows.map((row) => ({ ...row, source: clause.source })),
});

/** A clause that is a formula: the function, with its clause beside it. */
export type FormulaClause<F> = F & { readonly clause: Clause };

export const formula = <F extends (...values: never[]) => unknown>(clause: Clause, calculate: F): FormulaClause<F> =>
  Object.assign(calculate, { clause });
