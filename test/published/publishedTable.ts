import { describe, expect, it } from 'vitest';

/** A value that somebody published, beside what it was published for. */
export interface PublishedRow<Inputs, Expected> {
  readonly id: string;
  readonly inputs: Inputs;
  readonly expected: Expected;
  /** Greatest difference of a number that still agrees; 0: exactly, `null`: not a number. */
  readonly tolerance: number | null;
  /** Standard or document, edition, clause or table. */
  readonly source: string;
  /** `read`: in the source's own text; `secondary`: quoted by somebody else. */
  readonly how: 'read' | 'secondary';
}

/** Runs a table of published values; a tolerance of 0 or `null` asks for the very same. */
export function checkPublished<Inputs, Expected>(
  title: string,
  rows: readonly PublishedRow<Inputs, Expected>[],
  compute: (inputs: Inputs) => Expected,
): void {
  describe(title, () => {
    it.each(rows.map((row) => [`${row.id}: ${row.source} (${row.how})`, row] as const))('%s', (_, row) => {
      const computed = compute(row.inputs);
      if (row.tolerance === null || row.tolerance === 0) expect(computed).toEqual(row.expected);
      else expect(Math.abs((computed as number) - (row.expected as number))).toBeLessThanOrEqual(row.tolerance);
    });
  });
}
