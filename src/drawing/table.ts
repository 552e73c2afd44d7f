import type { FigureUnit } from './figure.js';
import type { Subject } from './subject.js';
import type { DrawingMessages } from './words.js';

/** A value of a table: numbers are in the unit of the sheet, or what the column says. */
export type Cell = string | number;

/** A table as plain data: put it into a page, a spreadsheet or a message. */
export interface Table {
  readonly title: string;
  /** The room, and the rule set that the plan was made by. */
  readonly head: readonly string[];
  readonly columns: readonly string[];
  /** One cell for each column. */
  readonly rows: readonly (readonly Cell[])[];
  /** What has to be read with it. */
  readonly notes: readonly string[];
  /** Why nothing may be bought, cut or fixed by this table; `null` when nothing holds the plan. */
  readonly hold: string | null;
}

/** What every table may be told. */
export interface TableOptions {
  /** Whole mm as numbers (default), or feet and inches as text. */
  readonly units?: FigureUnit;
  /** Words that replace those of {@link drawingWords}. */
  readonly messages?: DrawingMessages;
}

/** What all tables of a plan have: which room, by which rules, the hold if there is one, and what a plan never is. */
export function tableOf(subject: Subject, table: Pick<Table, 'title' | 'columns' | 'rows' | 'notes'>): Table {
  const { plan, say } = subject;
  return {
    title: table.title,
    head: [plan.room.name ?? plan.room.id ?? say('room.unnamed'), say('table.rules', { rules: plan.job.rules.title })],
    columns: table.columns,
    rows: table.rows,
    notes: [...table.notes, say('caution')],
    hold: holdOf(subject),
  };
}

function holdOf({ plan, say }: Subject): string | null {
  if (!plan.meta.held) return null;
  const reasons = plan.findings.filter(({ severity }) => severity === 'hold').map(({ message }) => message);
  return [`${say('hold.stamp')}.`, say('hold.text'), ...reasons].join(' ');
}

/** A length in a cell: a number of whole mm, or feet and inches as text. */
export const lengthCell = ({ length, unit }: Subject, mm: number): Cell => (unit === 'mm' ? Number(length(mm)) : length(mm));
