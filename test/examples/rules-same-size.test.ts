import { type Job, placeBoards, planCeiling, type RuleSet, rectangle, ruleSets, ruleValue } from 'soffitwright';
import { describe, expect, it } from 'vitest';

const job = (rules: RuleSet, spacing: number, thickness: number): Job => ({
  room: { outline: rectangle(6 * spacing, 2400) },
  joists: { direction: 'y', first: 0, spacing, width: 50 },
  lining: [],
  boards: [{ id: '8 ft', length: 4 * spacing, width: 1200, thickness, massPerArea: 8.4, edge: 'square' }],
  rules,
});
const exceeded = (rules: RuleSet, spacing: number, thickness: number): boolean =>
  planCeiling(job(rules, spacing, thickness)).findings.some(({ code }) => code === 'support-centres-exceeded');

describe('an inch size and its metric name are the same row', () => {
  it.each<[keyof typeof ruleSets, number, number]>([
    ['nbcCanada', 400, 9.5],
    ['nbcCanada', 406, 9.5],
    ['nbcCanada', 406.4, 9.5],
    ['nbcCanada', 600, 12.7],
    ['nbcCanada', 609.6, 12.7],
    ['nbcCanada', 610, 12.7],
    ['nbcCanada', 610, 12.5],
    ['ircUs', 400, 9.5],
    ['ircUs', 406.4, 9.5],
    ['ircUs', 600, 12.7],
    ['ircUs', 610, 12.7],
    ['ircUs', 610, 15.9],
  ])('%s: joists at %f carry board of %f', (rules, spacing, thickness) => {
    expect(exceeded(ruleSets[rules], spacing, thickness)).toBe(false);
  });

  it.each<[keyof typeof ruleSets, number, number]>([
    ['nbcCanada', 420, 9.5],
    ['nbcCanada', 625, 12.7],
    ['ircUs', 420, 9.5],
    ['ircUs', 625, 15.9],
  ])('%s: joists at %f do not carry board of %f', (rules, spacing, thickness) => {
    expect(exceeded(ruleSets[rules], spacing, thickness)).toBe(true);
  });

  it('the UK table is metric: 9.5 board over joists at 16 in is beyond its 400', () => {
    expect(exceeded(ruleSets.uk, 400, 9.5)).toBe(false);
    expect(exceeded(ruleSets.uk, 406.4, 9.5)).toBe(true);
  });

  it('what is printed stays printed: 400 and 600 in Canada', () => {
    const given = { boardThickness: 12.7, orientation: 'across' } as const;
    expect(ruleValue(ruleSets.nbcCanada, 'support.centres', given)).toMatchObject({ value: 600, range: { greatest: 610 } });
  });

  it('serves spacing that depends on centres from one row', () => {
    for (const [centres, expected] of [
      [400, 406.4],
      [406.4, 406.4],
      [600, 304.8],
      [610, 304.8],
    ]) {
      const given = { fixing: 'nail', adhesive: true, centres } as const;
      expect(ruleValue(ruleSets.ircUs, 'fixing.field', given).value).toBe(expected);
    }
  });

  it('holds for the placement by itself', () => {
    const { findings } = placeBoards({ ...job(ruleSets.nbcCanada, 610, 12.7) } as Parameters<typeof placeBoards>[0]);
    expect(findings.map(({ code }) => code)).not.toContain('support-centres-exceeded');
  });
});
