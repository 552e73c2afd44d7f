import { type Opening, planCeiling, rectangle } from 'soffitwright';
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
