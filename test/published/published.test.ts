import { describe, expect, it } from 'vitest';
import { cited, type PublishedRow } from './publishedTable.js';
import { publishedTables } from './tables/publishedTables.js';

const titled = (row: PublishedRow, number: number): string =>
  `${number + 1}. ${row.clause}: ${row.what ?? JSON.stringify(row.inputs)}, ${cited(row.source)}`;

for (const [file, tables] of Object.entries(publishedTables)) {
  describe(file, () => {
    for (const { title, rows, compute, rowOf } of tables) {
      it.each(rows.map((row, number) => [titled(row, number), row] as const))(`${title} %s`, (_, row) => {
        const { inputs, expected, tolerance, source } = row;
        const computed = compute(inputs);
        if (tolerance === null || tolerance === 0) expect(computed).toEqual(expected);
        else expect(Math.abs((computed as number) - (expected as number))).toBeLessThanOrEqual(tolerance);
        // The library cites what the table cites, and does not call it better known than it is.
        const found = rowOf?.(inputs);
        if (found !== undefined) expect(found.source).toEqual(source);
      });
    }
  });
}
