import type { Conditions, RuleKey, RuleRow, RuleSet, Source } from 'soffitwright';
import { rowFor } from '../../src/rules/ruleValue.js';

/** A value that somebody published, beside what it was published for. */
export interface PublishedRow<Inputs = unknown, Expected = unknown> {
  /** Id of the clause in `src/rules/standards/` that the row checks. */
  readonly clause: string;
  /** What the row is, where the inputs do not say it. */
  readonly what?: string;
  readonly inputs: Inputs;
  /** As published. */
  readonly expected: Expected;
  /** Greatest difference of a number that still agrees; 0: exactly, `null`: not a number. */
  readonly tolerance: number | null;
  /** Where the value was published: standard or document, edition, clause or table, and whether it was read there or in a quotation. */
  readonly source: Source;
}

/** Published values of one kind, and how the library comes to its own. */
export interface PublishedTable<Inputs = unknown, Expected = unknown> {
  readonly title: string;
  readonly rows: readonly PublishedRow<Inputs, Expected>[];
  readonly compute: (inputs: Inputs) => Expected;
  /** For values of a rule set: the row that the inputs lead to. */
  readonly rowOf?: (inputs: Inputs) => RuleRow | undefined;
}

/** Hides what a table's inputs are, so that tables of all kinds can be listed together. */
export const published = <Inputs, Expected>(table: PublishedTable<Inputs, Expected>): PublishedTable =>
  table as unknown as PublishedTable;

/** What is asked of a rule set. */
export interface Asked {
  readonly key: RuleKey;
  readonly given: Conditions;
}

/** Published values that a rule set must give: in the rule's unit, or `null` where the document does not permit it. */
export const publishedRules = (
  title: string,
  set: RuleSet,
  rows: readonly PublishedRow<Asked, number | null>[],
): PublishedTable =>
  published<Asked, number | null>({
    title: `${title} (${set.id})`,
    rows,
    compute: ({ key, given }) => rowFor(set, key, given)?.value ?? null,
    rowOf: ({ key, given }) => rowFor(set, key, given),
  });

/** Standard, edition, clause and how it was read, as a person cites them. */
export const cited = ({ standard, edition, clause, standing }: Source): string =>
  `${[standard, edition, clause].filter(Boolean).join(', ')} (${standing})`;
