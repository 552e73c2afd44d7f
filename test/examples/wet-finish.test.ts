import { compareRules, type Job, planCeiling, rectangle, ruleSets } from 'soffitwright';
import { describe, expect, it } from 'vitest';

const job = (set: keyof typeof ruleSets, spacing: number, thickness: number, finish?: 'skim' | 'tape'): Job => ({
  room: { outline: rectangle(6 * spacing, 2400) },
  joists: { direction: 'y', first: 0, spacing, width: 50 },
  lining: [],
  boards: [{ id: '8 ft', length: 4 * spacing, width: 1200, thickness, massPerArea: 8.4, edge: 'tapered' }],
  rules: ruleSets[set],
  ...(finish && { finish }),
});
const told = (of: Job) => planCeiling(of).findings.filter(({ code }) => code === 'wet-finish');

describe('plaster on a board', () => {
  it('wants joists at 400 in Canada under 12.7 mm, where paint is content with 600', () => {
    expect(told(job('nbcCanada', 600, 12.7))[0]).toMatchObject({
      severity: 'warning',
      value: 600,
      limit: 400,
      source: { standing: 'read' },
    });
    expect(told(job('nbcCanada', 600, 12.7, 'tape'))).toEqual([]);
    expect(told(job('nbcCanada', 406, 12.7))).toEqual([]);
    expect(told(job('nbcCanada', 610, 15.9))).toEqual([]);
  });

  it('is not permitted there on 9.5 mm', () => {
    const [found] = told(job('nbcCanada', 400, 9.5));
    expect(found.limit).toBeUndefined();
    expect(found.message).toContain('9.5 mm board is not in the rule set');
    expect(told(job('nbcCanada', 400, 9.5, 'tape'))).toEqual([]);
  });

  it('wants 16 in in the United States under 1/2 in', () => {
    expect(told(job('ircUs', 610, 12.7))[0]).toMatchObject({ limit: 406.4, source: { standing: 'secondary' } });
    expect(told(job('ircUs', 610, 15.9))).toEqual([]);
  });

  it('is nothing apart where the set does not tell it apart', () => {
    for (const set of ['uk', 'ukOverSoundLining', 'asNzs', 'din'] as const) expect(told(job(set, 400, 13))).toEqual([]);
  });

  it('is compared as it is planned', () => {
    const centres = (finish: 'skim' | 'tape') => {
      const { rules, sets } = compareRules(job('uk', 600, 15.9, finish), { nbc: ruleSets.nbcCanada });
      return [rules[0].values[0].value, sets[0].centresWithin];
    };
    expect(centres('skim')).toEqual([600, true]);
    const thin = (finish: 'skim' | 'tape') => compareRules(job('uk', 600, 12.7, finish), { nbc: ruleSets.nbcCanada });
    expect([thin('skim').rules[0].values[0].value, thin('skim').sets[0].centresWithin]).toEqual([400, false]);
    expect([thin('tape').rules[0].values[0].value, thin('tape').sets[0].centresWithin]).toEqual([600, true]);
    expect(thin('skim').sets[0].findings.map(({ code }) => code)).toContain('wet-finish');
  });
});
