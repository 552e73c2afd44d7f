import type { RuleRow } from 'soffitwright';
import type { Clause } from '../../src/rules/clause.js';
import * as americanGuidance from '../../src/rules/standards/americanGuidance.js';
import * as asNzs2589of2017 from '../../src/rules/standards/asNzs2589of2017.js';
import * as beams from '../../src/rules/standards/beams.js';
import * as boardTests from '../../src/rules/standards/boardTests.js';
import * as bs7671of2008 from '../../src/rules/standards/bs7671of2008.js';
import * as din18181 from '../../src/rules/standards/din18181.js';
import * as din18182of1987 from '../../src/rules/standards/din18182of1987.js';
import * as en338of2016 from '../../src/rules/standards/en338of2016.js';
import * as en520of2009 from '../../src/rules/standards/en520of2009.js';
import * as en1995of2008 from '../../src/rules/standards/en1995of2008.js';
import * as eu2006of673 from '../../src/rules/standards/eu2006of673.js';
import * as gypsumAssociation from '../../src/rules/standards/gypsumAssociation.js';
import * as irc2018 from '../../src/rules/standards/irc2018.js';
import * as nbc2023alberta from '../../src/rules/standards/nbc2023alberta.js';
import * as nds2018 from '../../src/rules/standards/nds2018.js';
import * as nhbc2022 from '../../src/rules/standards/nhbc2022.js';
import * as notchesAndHoles from '../../src/rules/standards/notchesAndHoles.js';
import * as nzs3604of2011 from '../../src/rules/standards/nzs3604of2011.js';
import * as specification2014 from '../../src/rules/standards/specification2014.js';
import * as woodHandbook from '../../src/rules/standards/woodHandbook.js';

/** The modules of `src/rules/standards/`, by file name. */
export const standards: Readonly<Record<string, object>> = {
  americanGuidance,
  asNzs2589of2017,
  beams,
  boardTests,
  bs7671of2008,
  din18181,
  din18182of1987,
  en338of2016,
  en520of2009,
  en1995of2008,
  eu2006of673,
  gypsumAssociation,
  irc2018,
  nbc2023alberta,
  nds2018,
  nhbc2022,
  notchesAndHoles,
  nzs3604of2011,
  specification2014,
  woodHandbook,
};

/** A clause as it stands in the code. */
export interface CodeClause extends Clause {
  /** Its module and its name there. */
  readonly module: string;
  readonly name: string;
  /** Rows for rule sets, where it is a table of them. */
  readonly ruleRows: readonly RuleRow[];
}

const byName = ([a]: [string, unknown], [b]: [string, unknown]): number => (a < b ? -1 : 1);

function isClause(value: unknown): value is Clause {
  return typeof value === 'object' && value !== null && 'id' in value && 'source' in value && 'governs' in value;
}

/** Rows that a rule set can hold have a source each. */
const ruleRowsOf = (clause: Clause): RuleRow[] =>
  'rows' in clause && Array.isArray(clause.rows) ? clause.rows.filter((row) => 'source' in row) : [];

/** Every clause that the modules export, by their names: runtimes list exports in different orders. */
export const codeClauses: readonly CodeClause[] = Object.entries(standards).flatMap(([module, exported]) =>
  Object.entries(exported)
    .sort(byName)
    .flatMap(([name, value]): CodeClause[] => {
      const clause: unknown = typeof value === 'function' && 'clause' in value ? value.clause : value;
      if (!isClause(clause)) return [];
      return [{ ...clause, module, name, ruleRows: ruleRowsOf(clause) }];
    }),
);
