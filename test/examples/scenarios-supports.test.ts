import { type Joist, type Opening, planCeiling, rectangle, tryPlaceBoards } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { errorsIn, even, GAPS, stock } from '../generators/scenario.js';

const lining = [{ kind: 'plasterboard' as const, thickness: 9.5 }];

describe('a bathroom with six lights and a fan, 2390 by 2380', () => {
  const lights = [445, 1050, 1850].flatMap((x) => [600, 1780].map((y) => ({ x, y })));
  const openings: Opening[] = [
    ...lights.map((centre, k): Opening => ({ id: `L${k + 1}`, kind: 'light', centre, diameter: 70 })),
    { id: 'fan', kind: 'other', centre: { x: 2200, y: 1180 }, diameter: 125 },
  ];
  const request = {
    room: { outline: rectangle(2390, 2380), openings },
    joists: even(45, 400, 2345),
    rules: GAPS,
    boards: [stock(2400)],
  };

  it('tells the two lights that fall on a joist, with the nearest clear place', () => {
    const { findings } = planCeiling({ ...request, lining });
    const found = findings.filter(({ code }) => code === 'light-on-joist');
    expect(found.map(({ where }) => where?.joist)).toEqual(['J2', 'J2']);
    for (const { where, message } of found) {
      expect(where?.at?.x).toBe(445);
      expect(message).toMatch(/nearest clear place is/);
    }
  });

  it('keeps joints away from the lights', () => {
    const { layout } = planCeiling({ ...request, lining });
    expect(layout.findings.filter(({ code, where }) => code === 'joint-near-opening' && where?.joist !== undefined)).toEqual([]);
    expect(layout.boardsBought).toBe(2);
    expect(errorsIn(request, layout)).toEqual([]);
  });
});

describe('joists at 406 taken for 400, over 4200', () => {
  const job = { room: { outline: rectangle(4200, 3000) }, rules: GAPS, boards: [stock(2400)], lining };

  it('are doubted by how far the last of them would be from its place', () => {
    const { findings } = planCeiling({ ...job, joists: even(100, 400) });
    const drift = findings.find(({ code }) => code === 'spacing-drift');
    // Ten bays of 6, or of 6.4 where 406 is 16 in.
    expect(drift?.value).toBeCloseTo(62, -1);
    expect(drift?.remedy).toMatch(/far wall/);
  });

  it('are found out by a mark on the last', () => {
    const { findings } = planCeiling({ ...job, joists: even(100, 400, 100 + 10 * 406) });
    expect(findings.filter(({ code }) => code === 'spacing-contradicted')).toHaveLength(1);
  });
});

describe('joists askew to both walls', () => {
  /** Joists every 450 across a room of 4000 by 3000, leaning by so many mm over its depth. */
  const leaning = (by: number): Joist[] =>
    Array.from({ length: 14 }, (_, k): Joist => {
      const x = 100 + 450 * k - by;
      return { id: `J${k + 1}`, start: { x, y: 0 }, end: { x: x + by, y: 3000 }, width: 50, sd: 0, presence: 1, known: 'given' };
    });
  const told = (by: number) => {
    const attempt = tryPlaceBoards({ room: { outline: rectangle(4000, 3000) }, joists: leaning(by), boards: [stock(2400)] });
    if (!attempt.ok) throw new Error(`no layout on joists that lean by ${by}`);
    return attempt.value.findings.filter(({ code }) => code === 'rows-askew');
  };

  it('10 degrees: it is told how far the rows are from square', () => {
    // 3000 / tan 80 = 529 over 3000, and 211.6 over a row of 1200.
    const [found, ...others] = told(529);
    expect(others).toEqual([]);
    expect(found).toMatchObject({ severity: 'warning', value: 212, limit: 50, unit: 'mm', where: { joist: 'J1' } });
    expect(found.message).toContain('176 mm in a metre');
  });

  it('is told where they run aside by more than the width of a joist over a row, and not by less', () => {
    // 50 over 1200 is 125 over 3000.
    expect(told(126)).toHaveLength(1);
    expect(told(125)).toEqual([]);
    expect(told(0)).toEqual([]);
  });
});
