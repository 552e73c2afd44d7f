import { fixingSpacing, isInputError, type RuleKey, ruleSets, ruleTable, ruleValue } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { checkPublished, type PublishedRow } from './publishedTable.js';

/** Greatest joist centres that a table allows a board, with or without intermediate noggings; `null`: no row. */
interface Centres {
  readonly thickness: number;
  readonly centres: number;
}
type Allowed = 'without noggings' | 'with noggings' | 'not allowed';

const WARRANTY = 'NHBC Standards 2022, 9.2.4 table 5';
const warranty = (id: string, thickness: number, centres: number, expected: Allowed): PublishedRow<Centres, Allowed> => ({
  id,
  inputs: { thickness, centres },
  expected,
  tolerance: null,
  source: WARRANTY,
  how: 'read',
});

function allowed({ thickness, centres }: Centres): Allowed {
  const limit = (noggings: boolean): number => {
    try {
      return ruleValue(ruleSets.uk, 'support.centres', { boardThickness: thickness, orientation: 'across', noggings }).value ?? 0;
    } catch (error) {
      if (isInputError(error)) return 0;
      throw error;
    }
  };
  return centres <= limit(false) ? 'without noggings' : centres <= limit(true) ? 'with noggings' : 'not allowed';
}

checkPublished(
  'board thickness, joist centres and intermediate noggings: nhbc-2022-9.2.4-table-5',
  [
    warranty('N1', 9.5, 400, 'without noggings'),
    warranty('N2', 9.5, 450, 'with noggings'),
    warranty('N3', 9.5, 600, 'not allowed'),
    warranty('N4', 12.5, 400, 'without noggings'),
    warranty('N5', 12.5, 450, 'without noggings'),
    warranty('N6', 12.5, 600, 'with noggings'),
    warranty('N7', 12.5, 625, 'not allowed'),
    warranty('N8', 15, 600, 'without noggings'),
    warranty('N9', 15, 625, 'not allowed'),
  ],
  allowed,
);

describe('perimeter noggings', () => {
  it('are asked for by every row of the table, and may be waived only for 15 mm', () => {
    const notes = ruleTable(ruleSets.uk, 'support.centres').map((row) => row.note ?? '');
    expect(notes).toHaveLength(5);
    for (const note of notes) expect(note).toContain('perimeter noggings');
    expect(notes.filter((note) => note.includes('waive'))).toHaveLength(1);
  });
});

const SPECIFICATION = 'Generic specification clauses 2014';
const specified = (
  id: string,
  key: RuleKey,
  expected: number,
  clause: string,
  fixing: 'screw' | 'nail' = 'screw',
): PublishedRow<{ key: RuleKey; fixing: 'screw' | 'nail' }, number> => ({
  id,
  inputs: { key, fixing },
  expected,
  tolerance: 0,
  source: `${SPECIFICATION}, ${clause}, as quoted in a project specification`,
  how: 'secondary',
});

checkPublished(
  'spacing and edge distances',
  [
    specified('F1', 'fixing.field', 230, 'K10 610, M20 610'),
    specified('F2', 'fixing.field', 150, 'K10 610, M20 610', 'nail'),
    specified('F3 board ends', 'fixing.boardEnd', 150, 'K10 590'),
    specified('F3 perimeter', 'fixing.perimeter', 150, 'K10 590'),
    specified('F5', 'fixing.boundEdgeDistance', 10, 'K10 610, M20 610'),
    specified('F6', 'fixing.cutEdgeDistance', 13, 'K10 610, M20 610'),
    specified('F7', 'fixing.timberEdgeDistance', 6, 'K10 610, M20 610'),
    specified('F13', 'joint.gap', 3, 'M20 612'),
  ],
  ({ key, fixing }) => ruleValue(ruleSets.uk, key, { fixing }).value as number,
);

describe('what a clause was written for', () => {
  it('F3: 150 at ends and perimeters stands in a clause for metal framing, so on timber it should hold and need not', () => {
    for (const key of ['fixing.boardEnd', 'fixing.perimeter'] as const) {
      const { level, note } = ruleValue(ruleSets.uk, key);
      expect(level).toBe('should');
      expect(note).toContain('metal framing');
    }
  });

  it('F4: the 300 of the same clauses is for walls, and no ceiling spacing of the set is 300', () => {
    const { field, boardEnd, perimeter } = fixingSpacing({ boardThickness: 12.5, joistSpacing: 400 });
    expect([field, boardEnd, perimeter]).toEqual([230, 150, 150]);
  });
});
