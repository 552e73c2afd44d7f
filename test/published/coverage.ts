import { type Rule, type RuleKey, type RuleRow, type RuleSet, ruleSets, type Standing } from 'soffitwright';
import { leftOut } from './leftOut.js';
import { cited, type PublishedRow } from './publishedTable.js';
import { type CodeClause, codeClauses } from './standards.js';
import { publishedTables } from './tables/publishedTables.js';

/** A row of a published table, the file that it stands in, and the row of a rule set that it leads to. */
interface Check {
  readonly file: string;
  readonly row: PublishedRow;
  readonly reaches?: RuleRow;
}

export const checks: readonly Check[] = Object.entries(publishedTables).flatMap(([file, tables]) =>
  tables.flatMap(({ rows, rowOf }) =>
    rows.map((row): Check => {
      const reaches = rowOf?.(row.inputs);
      return { file, row, ...(reaches && { reaches }) };
    }),
  ),
);

const isPublished = (standing: Standing): boolean => standing === 'read' || standing === 'secondary';

/** What the code holds as published and no published value checks, a line for each. */
export function uncheckedValues(clauses: readonly CodeClause[], against: readonly Check[]): string[] {
  return clauses
    .filter(({ source }) => isPublished(source.standing))
    .flatMap(({ id, ruleRows }) => {
      const own = against.filter(({ row }) => row.clause === id);
      if (own.length === 0) return [`${id}: no published check`];
      return ruleRows
        .filter((row) => inSets(row) && !own.some(({ reaches }) => reaches === row))
        .map(({ value, when }) => `${id}: no published check of ${value} ${JSON.stringify(when ?? {})}`);
    });
}

const rulesOfSets = Object.values(ruleSets).flatMap((set: RuleSet) =>
  (Object.entries(set.rules) as [RuleKey, Rule][]).map(([key, { rows }]) => ({ set: set.id, key, rows })),
);

const inSets = (row: RuleRow): boolean => rulesOfSets.some(({ rows }) => rows.includes(row));

/** Values of rule sets that belong to no clause and yet are given as published. */
export const loosePublishedValues = (): string[] =>
  rulesOfSets.flatMap(({ set, key, rows }) =>
    rows
      .filter((row) => isPublished(row.source.standing) && !codeClauses.some(({ ruleRows }) => ruleRows.includes(row)))
      .map(({ value }) => `${set} ${key}: ${value}`),
  );

/** Where a clause is used: keys of rule sets, or the function that it is. */
function usedBy({ ruleRows, module, name }: CodeClause): string {
  const uses = rulesOfSets.filter(({ rows }) => ruleRows.some((row) => rows.includes(row)));
  const keys = [...new Set(uses.map(({ key }) => key))];
  const written = keys.map((key) => {
    const sets = uses.filter((use) => use.key === key).map(({ set }) => set);
    return `\`${key}\` (${sets.join(', ')})`;
  });
  return written.length > 0 ? written.join('; ') : `\`${name}\` in ${module}`;
}

function checkedBy({ id, source }: CodeClause): string {
  const own = checks.filter(({ row }) => row.clause === id);
  if (own.length === 0) return isPublished(source.standing) ? '**none**' : `none: ${WORDS[source.standing]}`;
  const files = [...new Set(own.map(({ file }) => file))];
  return files.map((file) => `${file}: ${own.filter((each) => each.file === file).length}`).join(', ');
}

const WORDS: Readonly<Record<Standing, string>> = {
  read: 'read',
  secondary: 'quoted by somebody else',
  practice: 'common practice',
  memory: 'from memory',
  derived: 'arithmetic on other values',
};

const line = (...cells: readonly string[]): string => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [line(...head), line(...head.map(() => '---')), ...rows.map((row) => line(...row))].join('\n');

const clauseText = ({ source: { standard, edition, clause } }: CodeClause): string =>
  [standard, edition, clause].filter(Boolean).join(', ');

const INITIAL: Readonly<Record<Standing, string>> = {
  read: 'R',
  secondary: 'S',
  practice: 'P',
  memory: 'M',
  derived: 'D',
};

/** All values of a rule in one set, each with the initial of its standing: "230 S, 150 S". */
const valuesOf = ({ rows }: Rule): string =>
  [...new Set(rows.map(({ value, source }) => `${value ?? 'none'} ${INITIAL[source.standing]}`))].join(', ');

/** The page of clauses, made from the code. */
export function coveragePage(): string {
  const sets: readonly RuleSet[] = Object.values(ruleSets);
  const sorted = codeClauses
    .map((clause) => ({ clause, text: `${clauseText(clause)} ${clause.governs}` }))
    .sort((a, b) => (a.text < b.text ? -1 : 1))
    .map(({ clause }) => clause);
  return `# What the rules rest on

Made from the code by \`npm run coverage:table\`; a test compares. A clause is a table of values or a function in
\`src/rules/standards/\`. The last column counts its published checks in \`test/published/tables/\`: values as a document prints them,
beside what the library makes of them. No published check is needed for what is not published: common practice, memory, arithmetic.

## Clauses

${table(
  ['clause', 'governs', 'key or function', 'standing', 'published checks'],
  sorted.map((clause) => [clauseText(clause), clause.governs, usedBy(clause), WORDS[clause.source.standing], checkedBy(clause)]),
)}

## Values of the rule sets

All values of each rule, whatever the conditions, in the rule's unit. R: read in the document; S: quoted by somebody else; P: common
practice, no source; M: from memory, not seen; D: arithmetic on other values.

${table(
  ['key', 'unit', 'level', ...sets.map(({ id }) => id)],
  (Object.keys(ruleSets.uk.rules) as RuleKey[]).map((key) => [
    `\`${key}\``,
    ruleSets.uk.rules[key].unit,
    ruleSets.uk.rules[key].level,
    ...sets.map(({ rules }) => valuesOf(rules[key])),
  ]),
)}

## Known, and left out

What these documents also say and the library does not use.

${table(
  ['clause', 'says', 'left out because'],
  leftOut.map(({ source, says, because }) => [cited(source), says, because]),
)}
`;
}
