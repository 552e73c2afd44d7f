import { planCeiling, rectangle, ruleSets } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { movementJoint } from '../../src/plan/movementJoint.js';

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

  it('is said on which joist the joint would go, near the middle', () => {
    const [found] = told(10_400);
    // Half way across the 2400 of the room.
    expect(found.where).toEqual({ joist: 'J14', at: { x: 5200, y: 1200 } });
    expect(found.message).toContain('It would go on J14.');
  });
});

describe('a long ceiling of any shape', () => {
  const joists = (length: number) =>
    Array.from({ length: Math.floor(length / 400) }, (_, k) => ({
      id: `J${k + 1}`,
      start: { x: 200 + 400 * k, y: 0 },
      end: { x: 200 + 400 * k, y: 3000 },
      width: 50,
      sd: 0,
      presence: 1,
      known: 'given' as const,
    }));
  const ring = (...at: readonly (readonly [number, number])[]) => at.map(([x, y]) => ({ x, y }));
  const row = (number: number, low: number, high: number) => ({ row: number, low, high, width: high - low, ripped: false });

  it('is measured as far as it runs straight, not from end to end', () => {
    // Two arms of 6 m, one above the other, that meet in 2 m.
    const stepped = ring([0, 0], [6000, 0], [6000, 1000], [11_000, 1000], [11_000, 2000], [5000, 2000], [5000, 1000], [0, 1000]);
    const field = { outline: stepped, joists: joists(11_000), direction: 'y' as const };
    expect(movementJoint([field], [], ruleSets.uk)).toEqual([]);
    const joined = ring([0, 0], [6000, 0], [6000, 1000], [11_000, 1000], [11_000, 2000], [0, 2000]);
    const [found] = movementJoint([{ ...field, outline: joined }], [], ruleSets.uk);
    expect(found).toMatchObject({ value: 11_000, where: { joist: 'J14', at: { x: 5400, y: 1500 } } });
  });

  it('is told where it is longest: on the side, where that is at one side only', () => {
    const at = (outline: { x: number; y: number }[]) => {
      const [found] = movementJoint([{ outline, joists: joists(10_800), direction: 'y' }], [], ruleSets.uk);
      return [found.value, found.where?.at];
    };
    // Both ends lean in by 1 in 5, from the low side or from the high one.
    expect(at(ring([0, 0], [10_800, 0], [10_200, 3000], [600, 3000]))).toEqual([10_800, { x: 5400, y: 0 }]);
    expect(at(ring([600, 0], [10_200, 0], [10_800, 3000], [0, 3000]))).toEqual([10_800, { x: 5400, y: 3000 }]);
    // As long along both sides, and parted between them: the middle is not of it.
    const waist = ring(
      [0, 0],
      [10_800, 0],
      [10_800, 1000],
      [6000, 1000],
      [6000, 2000],
      [10_800, 2000],
      [10_800, 3000],
      [0, 3000],
    );
    expect(at(waist)).toEqual([10_800, { x: 5400, y: 0 }]);
    // A side that is not on a whole mm, and the middle of a run 3000.5 deep to the nearest.
    expect(at(ring([0, 0.25], [10_800, 0.25], [10_200, 3000], [600, 3000]))).toEqual([10_800, { x: 5400, y: 0.25 }]);
    expect(at(ring([0, 0], [10_800, 0], [10_800, 3000.5], [0, 3000.5]))).toEqual([10_800, { x: 5400, y: 1500 }]);
  });

  it('wants several joints where one is not enough, and names none where no timber is in reach', () => {
    const outline = ring([0, 0], [20_600, 0], [20_600, 3000], [0, 3000]);
    const field = { outline, joists: joists(20_600), direction: 'y' as const };
    expect(movementJoint([field], [], ruleSets.uk)[0].message).toContain('It would go on J18 and J35.');
    const few = { ...field, joists: field.joists.slice(0, 10) };
    const [found] = movementJoint([few], [], ruleSets.uk);
    expect(found.where).toBeUndefined();
    expect(found.message).not.toContain('It would go');
  });

  it('that is long along its joists is divided between two rows', () => {
    const outline = ring([0, 0], [3000, 0], [3000, 10_800], [0, 10_800]);
    const rows = Array.from({ length: 9 }, (_, k) => row(k + 1, 1200 * k, 1200 * k + 1200));
    const [found] = movementJoint([{ outline, joists: joists(3000), direction: 'y' }], rows, ruleSets.uk);
    expect(found).toMatchObject({ value: 10_800, where: { at: { x: 1500, y: 4800 } } });
    expect(found.message).toContain('It would go on the joint of rows 4 and 5.');
  });

  it('that is parted into zones is measured zone by zone', () => {
    const halves = [0, 5200].map((x, k) => ({
      zone: k === 0 ? 'A' : 'B',
      outline: ring([x, 0], [x + 5200, 0], [x + 5200, 3000], [x, 3000]),
      joists: joists(10_400),
      direction: 'y' as const,
    }));
    expect(movementJoint(halves, [], ruleSets.uk)).toEqual([]);
  });
});
