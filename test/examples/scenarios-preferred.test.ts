import { placeBoards, planCeiling, rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { errorsIn, even, GAPS, rowsOf, stock } from '../generators/scenario.js';

const lining = [{ kind: 'plasterboard' as const, thickness: 9.5 }];

describe('boards that come short, in a room of 4680 by 3606', () => {
  const request = {
    room: { outline: rectangle(4680, 3606) },
    joists: even(140, 400),
    boards: [stock(2396, 1197, { lengthTolerance: 0, widthTolerance: 0 })],
  };

  it('take what is missing from the gaps: six boards, six butt joints, three rows and 7.5 at each wall', () => {
    for (const layout of [placeBoards(request), planCeiling({ ...request, lining }).layout]) {
      expect([layout.boardsBought, layout.endJoints, rowsOf(layout)]).toEqual([6, 6, [1197, 1197, 1197]]);
      expect([layout.rows[0].low, 3606 - layout.rows[2].high]).toEqual([7.5, 7.5]);
      const whole = layout.pieces.filter(({ length }) => length === 2400);
      expect(whole).toHaveLength(3);
      for (const { tight, cutLength, ends, outline } of whole) {
        expect([tight, cutLength]).toEqual([true, 2396]);
        const xs = outline.map(({ x }) => x);
        // Half of the usual gap is on the far side of the joint.
        const gaps = [Math.min(...xs) - ends[0].position, ends[1].position - Math.max(...xs)].map((half) => half + 1.5);
        expect(gaps).toEqual([3.5, 3.5]);
      }
      expect(errorsIn(request, layout)).toEqual([]);
    }
  });
});

describe('a room for one person, 3560 by 2930', () => {
  const room = { outline: rectangle(3560, 2930) };
  const joists = even(150, 400);

  it('is boarded with four and three butt joints as a tradesperson would, and says how far the wall is from the last joist', () => {
    const request = { room, joists, rules: GAPS, boards: [stock(3000)] };
    const { layout } = planCeiling({ ...request, lining });
    expect([layout.boardsBought, layout.endJoints]).toEqual([4, 3]);
    expect(layout.findings.find(({ code }) => code === 'perimeter-overhang')).toMatchObject({ value: 210, limit: 150 });
    expect(errorsIn(request, layout)).toEqual([]);
  });

  it('takes eight small boards and no row under 300, not seven with a row of 224', () => {
    const request = { room, joists, rules: GAPS, boards: [stock(1800, 900)] };
    const { layout } = planCeiling({ ...request, lining });
    expect(layout.boardsBought).toBe(8);
    expect(layout.endJoints).toBeLessThanOrEqual(8);
    expect(Math.min(...rowsOf(layout))).toBeGreaterThanOrEqual(300);
    const wider = planCeiling({ ...request, rules: { 'joint.gap': 3 }, lining }).layout;
    expect(2 * wider.boardsBought + wider.endJoints).toBeLessThanOrEqual(24);
    expect(Math.min(...rowsOf(wider))).toBeGreaterThanOrEqual(300);
    expect(errorsIn(request, layout)).toEqual([]);
  });
});
