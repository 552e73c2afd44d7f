import type { Ceiling } from './ceiling.js';
import { type RowShape, rowsOf } from './rowShapes.js';

/**
 * The rows of each part of a ceiling, numbered through all of them. In which order the parts are numbered is free: where the layout
 * numbers its rows, in the order in which most pieces of each part do.
 */
export function rowsOfParts(ceilings: readonly Ceiling[]): RowShape[][] {
  const rows = ceilings.map(({ about }) => rowsOf(about.map(({ box }) => box)));
  if (rows.length === 1) return rows;
  const starts = ceilings.map((ceiling, part) => claimedStart(ceiling, rows[part]));
  const order = ceilings.map((_, part) => part).sort((a, b) => starts[a] - starts[b] || a - b);
  let before = 0;
  for (const part of order) {
    const own = rows[part];
    rows[part] = own.map((row) => ({ ...row, row: row.row + before }));
    before += own.length;
  }
  return rows;
}

/** How many rows come before a part's first, as most of its pieces have it; 0 where none says. */
function claimedStart({ about }: Ceiling, rows: readonly RowShape[]): number {
  const votes = new Map<number, number>();
  for (const { row, pieces } of rows) {
    for (const index of pieces) {
      const { row: claimed } = about[index].claim;
      if (claimed !== undefined) votes.set(claimed - row, (votes.get(claimed - row) ?? 0) + 1);
    }
  }
  return [...votes].sort(([a, most], [b, other]) => other - most || a - b)[0]?.[0] ?? 0;
}
