import { checkStagger, isInputError } from 'soffitwright';
import { describe, expect, it } from 'vitest';

const told = (rows: number[][], minimum: number) =>
  checkStagger({ rows, minimum }).map(({ where, value }) => [where?.row, value]);

describe('the stagger of rows', () => {
  it('is enough at the minimum itself', () => {
    expect(told([[1225], [1625], [1225]], 400)).toEqual([]);
  });

  it('is told for each pair of neighbouring rows that is under it', () => {
    expect(told([[425, 2825], [825, 2425], [1225]], 401)).toEqual([
      [1, 400],
      [1, 400],
      [2, 400],
    ]);
  });

  it('does not look past the next row', () => {
    expect(told([[1225], [], [1225]], 600)).toEqual([]);
  });

  it('is never enough for joints in line', () => {
    expect(told([[1225], [1225]], 0)).toEqual([[1, 0]]);
  });

  it('is decided on the grid, not on the last bit', () => {
    // 0.1 + 0.2 is not 0.3 in binary.
    expect(told([[0.1 + 0.2], [300.3]], 300)).toEqual([]);
  });

  it('says what was asked for and by whom', () => {
    expect(checkStagger({ rows: [[425], [725]], minimum: 600 })).toEqual([
      {
        code: 'stagger',
        severity: 'error',
        message: 'Butt joints at 425 in row 1 and at 725 in row 2 are 300 mm apart; 600 is the least.',
        where: { row: 1 },
        value: 300,
        limit: 600,
        unit: 'mm',
        source: { standard: 'arithmetic on the values given', standing: 'derived' },
      },
    ]);
  });

  it('is nothing to ask of no rows', () => {
    expect(checkStagger({ rows: [], minimum: 300 })).toEqual([]);
  });

  it('names every mistake in what it is given', () => {
    try {
      checkStagger({ rows: [[Number.NaN], ['x' as unknown as number]], minimum: -1, more: 1 } as never);
      expect.unreachable();
    } catch (error) {
      if (!isInputError(error)) throw error;
      expect(error.problems.map(({ code, path }) => `${code} ${path}`).sort()).toEqual([
        'not-finite rows[0][0]',
        'too-small minimum',
        'unknown-field more',
        'wrong-type rows[1][0]',
      ]);
    }
  });
});
