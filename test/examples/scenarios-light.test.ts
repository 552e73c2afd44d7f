import { placeBoards, planCeiling, rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { buttJoints, codesOf, errorsIn, even, GAPS, rowsOf, stock } from '../generators/scenario.js';

const lining = [{ kind: 'plasterboard' as const, thickness: 9.5 }];

describe('a bedroom with a window in a wall that its joists run with, 4250 by 3380', () => {
  const room = { outline: rectangle(4250, 3380), walls: [{ edge: 3, window: true }] };
  const job = { room, joists: even(140, 400, undefined, 47), rules: GAPS };

  it.each([[3000, 5, 3]])(
    'keeps butt joints 1200 from it: boards of %i, %i of them, %i butt joints',
    (length, boards, joints) => {
      const request = { room, joists: job.joists, rules: GAPS, boards: [stock(length)] };
      const { layout } = planCeiling({ ...request, lining });
      expect([layout.boardsBought, layout.endJoints, rowsOf(layout)]).toEqual([boards, joints, [1200, 1200, 974]]);
      expect(buttJoints(layout)[0]).toBeGreaterThanOrEqual(1200);
      expect(codesOf(layout)).not.toContain('raking-light');
      expect(errorsIn(request, layout)).toEqual([]);
    },
  );

  it('says so where one is nearer', () => {
    const { joists, rules } = job;
    // Boards of 1250 in a room of 2100 can only meet on the joist at 940.
    const small = { ...room, outline: rectangle(2100, 1206) };
    const layout = placeBoards({ room: small, joists, rules, boards: [stock(1250)] });
    expect(buttJoints(layout)).toEqual([940]);
    expect(layout.findings.filter(({ code }) => code === 'raking-light')).toMatchObject([{ value: 940, limit: 1200 }]);
  });
});
