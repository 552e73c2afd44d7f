import { joistsFromPositions, placeBoards, planCeiling, rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { buttJoints, codesOf, errorsIn, even, GAPS, ring, stock } from '../generators/scenario.js';
import { boardedBedroom } from '../generators/windowBedroom.js';

const lining = [{ kind: 'plasterboard' as const, thickness: 9.5 }];

describe('a bedroom with a window in a wall that its joists run with, 4250 by 3380', () => {
  it('keeps butt joints 1200 from it: 6 boards of 2400, 4 butt joints', () => {
    expect(boardedBedroom(2400)).toEqual({ boards: 6, joints: 4, rows: [1200, 1200, 974], inLight: [], told: [], errors: [] });
  });
});

describe('a room for one person, 3560 by 2930', () => {
  const room = { outline: rectangle(3560, 2930) };
  const joists = even(150, 400);

  it.each([
    [3000, 5],
    [2995, 7],
  ])('is boarded with three boards of %i when boards count first, with %i butt joints', (length, joints) => {
    const request = { room, joists, rules: GAPS, boards: [stock(length)] };
    const layout = placeBoards(request);
    expect([layout.boardsBought, layout.endJoints]).toEqual([3, joints]);
    expect(errorsIn(request, layout)).toEqual([]);
  });
});

describe('a room about three sides of a court, 6000 by 3600', () => {
  const room = {
    outline: ring([0, 0], [6000, 0], [6000, 3600], [4200, 3600], [4200, 1600], [1800, 1600], [1800, 3600], [0, 3600]),
  };
  const request = { room, joists: even(60, 400, 5940), boards: [stock(2400)] };

  it('has no more butt joints than on the rows that somebody would try, 600 ripped at both sides', () => {
    const tried = placeBoards({ ...request, rowWidths: [590, 1200, 1200, 600] });
    const layout = placeBoards(request);
    expect(errorsIn(request, layout)).toEqual([]);
    expect(layout.boardsBought).toBeLessThanOrEqual(tried.boardsBought);
    expect(layout.endJoints).toBeLessThanOrEqual(tried.endJoints);
  });
});

describe('what joints keep clear of when as many boards will do', () => {
  const room = { outline: rectangle(3600, 3000) };
  const joists = even(25, 400, 3575);
  const request = { room, joists, rules: GAPS, boards: [stock(2400)] };

  it('is the joints of the old ceiling, end over end and edge over edge', () => {
    const joint = (x0: number, y0: number, x1: number, y1: number) =>
      [
        { x: x0, y: y0 },
        { x: x1, y: y1 },
      ] as const;
    const old = [
      {
        kind: 'plasterboard' as const,
        thickness: 9.5,
        joints: [
          joint(0, 1200, 3600, 1200),
          joint(0, 2400, 3600, 2400),
          joint(2425, 0, 2425, 1200),
          joint(1225, 1200, 1225, 2400),
        ],
      },
    ];
    const { layout } = planCeiling({ ...request, lining: old });
    expect(layout.boardsBought).toBe(4);
    expect(codesOf(layout)).not.toContain('joint-over-old-joint');
    expect(errorsIn({ ...request, lining: old }, layout)).toEqual([]);
  });

  it.each([0, 2])(
    'is the light of a window along the rows, wall %i: the full row is there and the ripped one opposite',
    (edge) => {
      const walls = [{ edge, window: true }];
      const { layout } = planCeiling({ ...request, room: { ...room, walls }, lining });
      expect(layout.boardsBought).toBe(4);
      const atWindow = edge === 0 ? layout.rows[0] : layout.rows[layout.rows.length - 1];
      expect([atWindow.width, atWindow.ripped]).toEqual([1200, false]);
      expect(codesOf(layout)).not.toContain('window-row-ripped');
    },
  );

  it('is the corners of a hatch', () => {
    const [x, y] = [1450, 350];
    const outline = rectangle(550, 500).map((point) => ({ x: point.x + x, y: point.y + y }));
    const openings = [{ id: 'loft', kind: 'hatch' as const, outline }];
    const { layout } = planCeiling({ ...request, room: { ...room, openings }, lining });
    expect(layout.boardsBought).toBeLessThanOrEqual(5);
    expect(codesOf(layout)).not.toContain('joint-near-hatch-corner');
  });
});

describe('two joists side by side under a partition, 100 wide at 1600', () => {
  const room = { outline: rectangle(3200, 1206) };
  const joists = joistsFromPositions({
    room,
    direction: 'y',
    positions: [50, 400, 800, 1200, 1575, 1625, 2000, 2400, 2800, 3150],
    width: 50,
  });
  const request = { room, joists, rules: GAPS, boards: [stock(2400)] };

  it('are where the butt joint goes when all else is equal, with the tolerance of both', () => {
    for (const layout of [placeBoards(request), planCeiling({ ...request, lining }).layout]) {
      expect([layout.boardsBought, layout.endJoints]).toEqual([2, 1]);
      expect(buttJoints(layout)).toEqual([1600]);
      const bearing = layout.pieces[1].ends[0].bearing;
      // (100 - 3) / 2 less 13 and 6.
      expect(bearing).toMatchObject({ tolerance: 29.5, outcome: 'secure' });
      expect(errorsIn(request, layout)).toEqual([]);
    }
  });
});
