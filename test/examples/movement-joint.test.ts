import { planCeiling, rectangle, ruleSets } from 'soffitwright';
import { describe, expect, it } from 'vitest';

const told = (width: number, rules = ruleSets.uk) =>
  planCeiling({
    room: { outline: rectangle(width, 2400) },
    joists: { direction: 'y', first: 0, spacing: 400, width: 50 },
    lining: [],
    boards: [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
    rules,
  }).findings.filter(({ code }) => code === 'movement-joint-wanted');

describe('a ceiling longer than one field of boards should be', () => {
  it('is said to want a movement joint, with the figure and where it comes from', () => {
    const [found] = told(10_400);
    expect(found).toMatchObject({
      severity: 'warning',
      value: 10_400,
      limit: 10_000,
      unit: 'mm',
      source: { standing: 'memory' },
    });
  });

  it('is left alone up to the limit, which is another in another country', () => {
    expect(told(10_000)).toEqual([]);
    expect(told(10_400, ruleSets.asNzs)).toEqual([]);
    expect(told(12_400, ruleSets.asNzs)[0].limit).toBe(12_000);
  });

  it('says that the figure is from memory only where it was needed', () => {
    const notes = (width: number) =>
      planCeiling({
        room: { outline: rectangle(width, 2400) },
        joists: { direction: 'y', first: 0, spacing: 400, width: 50 },
        lining: [],
        boards: [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
      }).findings.filter(({ code }) => code === 'rule-from-memory');
    expect(notes(8000)).toEqual([]);
    expect(notes(10_400)[0].message).toContain(ruleSets.uk.rules['movementJoint.maximumRun'].title);
  });
});
