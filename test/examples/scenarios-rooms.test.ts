import {
  checkLayout,
  type InputError,
  isInputError,
  type Job,
  placeBoards,
  planCeiling,
  rectangle,
  ruleSets,
  tryPlaceBoards,
  tryPlanCeiling,
} from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { codesOf, errorsIn, even, GAPS, ring, rowsOf, stock } from '../generators/scenario.js';

/** As a person would plan it: the default order of preference. */
const planned = (job: Omit<Job, 'lining'>) => planCeiling({ lining: [{ kind: 'plasterboard', thickness: 9.5 }], ...job });

describe('a box room, 2390 by 2380', () => {
  const job = { room: { outline: rectangle(2390, 2380) }, joists: even(45, 400, 2345), boards: [stock(2400)], rules: GAPS };

  it('takes two boards from wall to wall, the ripped edge at the wall, and no butt joint', () => {
    for (const layout of [placeBoards(job), planned(job).layout]) {
      expect([layout.boardsBought, layout.endJoints, layout.proven]).toEqual([2, 0, true]);
      expect(rowsOf(layout)).toEqual([1200, 1174]);
      const ripped = layout.rows.find((row) => row.ripped);
      const edges = layout.pieces.find(({ row }) => row === ripped?.row)?.edges;
      expect(ripped?.row === 1 ? edges?.low : edges?.high).toBe('cut');
      expect(ripped?.row === 1 ? edges?.high : edges?.low).toBe('bound');
      expect(errorsIn(job, layout)).toEqual([]);
    }
  });
});

describe('a room of 3600 by 3000', () => {
  const job = { room: { outline: rectangle(3600, 3000) }, joists: even(25, 400, 3575), rules: GAPS };

  it('takes four boards of 2400, as many as its area does, and does not begin every row at the same wall', () => {
    const request = { ...job, boards: [stock(2400)] };
    for (const layout of [
      placeBoards(request),
      planned(request).layout,
      placeBoards({ ...request, rowWidths: [1200, 1200, 594] }),
    ]) {
      expect([layout.boardsBought, layout.bound, layout.proven]).toEqual([4, 4, true]);
      expect(rowsOf(layout)).toEqual([1200, 1200, 594]);
      const fromTheWall = layout.pieces.filter(({ id, ends }) => id.endsWith('.1') && ends[0].meets === 'wall');
      expect(new Set(fromTheWall.map(({ length }) => length)).size).toBeGreaterThan(1);
      expect(errorsIn(request, layout)).toEqual([]);
    }
  });

  it('takes four of 3000 with three butt joints', () => {
    const request = { ...job, boards: [stock(3000)] };
    const layout = placeBoards(request);
    expect([layout.boardsBought, layout.endJoints]).toEqual([4, 3]);
    expect(errorsIn(request, layout)).toEqual([]);
  });
});

describe('a landing, 5200 by 880', () => {
  const job = { room: { outline: rectangle(5200, 880) }, joists: even(60, 400, 5160), rules: GAPS };

  it.each([
    [2400, 3, 2],
    [3000, 2, 1],
  ])('is one row: boards of %i, %i of them, %i butt joints', (length, boards, joints) => {
    const request = { ...job, boards: [stock(length)] };
    const { layout } = planned(request);
    expect([layout.rows.length, layout.boardsBought, layout.endJoints]).toEqual([1, boards, joints]);
    expect(codesOf(layout)).not.toContain('stagger');
    expect(errorsIn(request, layout)).toEqual([]);
  });

  it('takes small boards where large ones do not turn on the stair, with more butt joints', () => {
    const request = { ...job, boards: [stock(1800, 900)] };
    const { layout } = planned(request);
    expect([layout.boardsBought, layout.endJoints, layout.rows.length]).toEqual([4, 3, 1]);
    expect(errorsIn(request, layout)).toEqual([]);
  });
});

describe('a closet of 850 by 1400', () => {
  it('is one piece without a joint when its joists run the short way', () => {
    const request = {
      room: { outline: rectangle(850, 1400) },
      joists: { direction: 'x', first: 100, spacing: 400, width: 50 },
      boards: [stock(2400)],
      rules: GAPS,
    } as const;
    const { layout } = planned(request);
    expect([layout.pieces.length, layout.boardsBought, layout.endJoints]).toEqual([1, 1, 0]);
    expect(errorsIn(request, layout)).toEqual([]);
  });
});

describe('a room with its joists the long way, 2600 by 5400', () => {
  const job = { room: { outline: rectangle(2600, 5400) }, joists: even(50, 400, 2550), rules: GAPS };

  it('is boarded across them all the same, in five short rows, and boards of 3000 leave no butt joint', () => {
    const request = { ...job, boards: [stock(2400), stock(3000)] };
    const { layout } = planned(request);
    expect([layout.rows.length, layout.endJoints]).toEqual([5, 0]);
    expect(new Set(layout.pieces.map(({ length }) => length))).toEqual(new Set([2594]));
    expect(layout.boardsByStock).toEqual([{ stock: '3000 x 1200', count: 5 }]);
    expect(errorsIn(request, layout)).toEqual([]);
  });

  it('is refused when the boards are laid lengthways', () => {
    const layout = {
      pieces: [0, 1].map((k) => ({
        id: `${k + 1}`,
        outline: ring([3 + 1297 * k, 3], [1300 + 1294 * k, 3], [1300 + 1294 * k, 5397], [3 + 1297 * k, 5397]),
        board: 'B',
      })),
      boards: [{ id: 'B', stock: '5400 x 1300' }],
    };
    const found = checkLayout({ room: job.room, joists: job.joists, rules: GAPS, boards: [stock(5400, 1300)], layout });
    expect(found.filter(({ severity }) => severity === 'error').map(({ code }) => code)).toContain('board-parallel-to-supports');
  });
});

describe('a room in feet and inches, 12 ft 4 in by 10 ft 2 in', () => {
  const inch = 25.4;
  const request = {
    room: { outline: rectangle(148 * inch, 122 * inch) },
    joists: even(2 * inch, 16 * inch, 146 * inch, 1.5 * inch),
    boards: [
      stock(96 * inch, 48 * inch, { id: '4 x 8', thickness: 12.7 }),
      stock(144 * inch, 48 * inch, { id: '4 x 12', thickness: 12.7 }),
    ],
    rules: ruleSets.ircUs,
  };

  it('is planned by the rules of its country, every length exact to the grid', () => {
    const { layout } = planned(request);
    expect(codesOf(layout)).not.toContain('support-centres-exceeded');
    expect(layout.boardsBought).toBeLessThanOrEqual(4);
    const area = layout.pieces.reduce((sum, { cutLength, width }) => sum + cutLength * width, 0);
    expect(Math.abs(area / 1e6 - layout.areaM2)).toBeLessThan(1e-5);
    expect(errorsIn(request, layout)).toEqual([]);
  });
});

describe('what is no ceiling', () => {
  const room = { outline: rectangle(3600, 3000) };
  const job = { room, joists: even(25, 400, 3575), boards: [stock(2400)], rules: GAPS };
  const refused = (change: object): string[] => {
    try {
      planned({ ...job, ...change });
    } catch (error) {
      if (isInputError(error)) return (error as InputError).problems.map(({ code, path }) => `${path}: ${code}`);
      throw error;
    }
    return [];
  };

  it.each([
    ['no joists in a list', { joists: [] }],
    ['no joists at positions', { joists: { direction: 'y', positions: [], width: 50 } }],
  ])('is refused: %s', (_, change) => {
    const problems = refused(change);
    expect(problems.length).toBeGreaterThan(0);
    expect(problems.every((each) => each.startsWith('joists'))).toBe(true);
  });

  it.each([
    ['a negative width', { room: { outline: ring([0, 0], [-3600, 0], [-3600, 0], [0, 0]) } }],
    ['a room smaller than 200', { room: { outline: rectangle(180, 3000) } }],
    ['an outline that crosses itself', { room: { outline: ring([0, 0], [3600, 3000], [3600, 0], [0, 3000]) } }],
    ['a board of negative width', { boards: [stock(2400, -1200)] }],
    ['joists at a negative spacing', { joists: { direction: 'y', first: 25, spacing: -400, width: 50 } }],
  ])('is refused: %s', (_, change) => {
    expect(refused(change).length).toBeGreaterThan(0);
  });

  it('is refused: a gap larger than the room', () => {
    const attempt = tryPlanCeiling({ ...job, lining: [], rules: { 'perimeter.gap': 2000 } });
    expect(attempt.ok).toBe(false);
    expect(tryPlaceBoards({ ...job, rules: { 'perimeter.gap': 1500 } }).ok).toBe(false);
  });

  it('is not refused but planned: joists 750 apart, as an error of the plan; a board larger than the room', () => {
    const wide = planned({ ...job, joists: even(50, 750, 3550) });
    expect(wide.findings.find(({ code }) => code === 'support-centres-exceeded')).toMatchObject({
      severity: 'error',
      value: 750,
    });
    const small = planned({
      ...job,
      room: { outline: rectangle(1100, 1000) },
      joists: even(50, 400, 1050),
      boards: [stock(2400)],
    });
    expect([small.layout.boardsBought, small.layout.pieces.length]).toEqual([1, 1]);
  });
});
