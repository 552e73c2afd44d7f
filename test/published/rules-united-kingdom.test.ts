import { fixingSpacing, ruleSets, ruleTable, ruleValue } from 'soffitwright';
import { describe, expect, it } from 'vitest';

describe('perimeter noggings', () => {
  it('are asked for by every row of the table, and may be waived only for 15 mm', () => {
    const notes = ruleTable(ruleSets.uk, 'support.centres').map((row) => row.note ?? '');
    expect(notes).toHaveLength(5);
    for (const note of notes) expect(note).toContain('perimeter noggings');
    expect(notes.filter((note) => note.includes('waive'))).toHaveLength(1);
  });
});

describe('centres between two rows of the table (derived: it gives greatest centres)', () => {
  it('take the next row up: 12.5 at 500 is served by the row for 600, with noggings', () => {
    const rule = (noggings: boolean) =>
      ruleValue(ruleSets.uk, 'support.centres', { boardThickness: 12.5, orientation: 'across', noggings }).value as number;
    expect(rule(true) >= 500).toBe(true);
    expect(rule(false) >= 500).toBe(false);
  });
});

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

describe('the set for a sound old ceiling', () => {
  it('lets 9.5 mm go to 450 by common practice, and differs from the UK set in nothing else', () => {
    const asked = { boardThickness: 9.5, orientation: 'across', noggings: false } as const;
    expect(ruleValue(ruleSets.ukOverSoundLining, 'support.centres', asked)).toMatchObject({
      value: 450,
      source: { standing: 'practice' },
    });
    const { uk, ukOverSoundLining } = ruleSets;
    for (const key of Object.keys(uk.rules) as (keyof typeof uk.rules)[]) {
      if (key !== 'support.centres') expect(ukOverSoundLining.rules[key]).toEqual(uk.rules[key]);
    }
  });
});
