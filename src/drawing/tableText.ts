import type { Cell, Table } from './table.js';

/**
 * A table as plain text: title, room and rules, hold, columns aligned with spaces (numbers to the right), notes.
 *
 * @param table - what {@link cutList}, {@link screwSummary}, {@link buyingList}, {@link fixingOrder} or a part of
 *   {@link settingOut} returned
 * @returns lines that end with a line feed
 * @example
 * ```ts
 * import { tableText } from 'soffitwright/drawing';
 *
 * const rows = [['B1', 580], ['B2', 1175]];
 * const table = { title: 'Offcuts', head: ['Kitchen'], columns: ['board', 'length'], rows, notes: [], hold: null };
 * console.log(tableText(table));
 * // Offcuts
 * // Kitchen
 * //
 * // board  length
 * // -----  ------
 * // B1        580
 * // B2       1175
 * ```
 */
export function tableText({ title, head, columns, rows, notes, hold }: Table): string {
  const lines = [columns, ...rows].map((row) => row.map(plain));
  const widths = columns.map((_, i) => Math.max(...lines.map((line) => [...line[i]].length)));
  const numeric = columns.map((_, i) => rows.length > 0 && rows.every((row) => typeof row[i] === 'number' || row[i] === ''));
  const padded = (text: string, i: number): string => {
    const space = ' '.repeat(widths[i] - [...text].length);
    return numeric[i] ? space + text : text + space;
  };
  const ruled = [lines[0], widths.map((width) => '-'.repeat(width)), ...lines.slice(1)];
  const body = ruled.map((line) => line.map(padded).join('  ').trimEnd());
  const parts = [[title, ...head].map(plain), hold === null ? [] : [plain(hold)], body, notes.map(plain)].filter(
    (part) => part.length > 0,
  );
  return `${parts.map((part) => part.join('\n')).join('\n\n')}\n`;
}

/** One cell is one line, whatever a name contains. */
const plain = (cell: Cell): string => String(cell).replace(/\s+/g, ' ').trim();
