import { describe, expect, it } from 'vitest';
import { type BoardLayout, checkLayout, type PlacementRequest, placeBoards, rectangle } from '../../src/index.js';

/** Joists at centres of 400 under a ceiling of 4200, without the one at 1225, and the timbers beside or over a hatch of 1050 to 1650. */
const timbersAnd = (...more: number[]) => [25, 425, 825, 2025, 2425, 2825, 3225, 3625, 4025, 4175, ...more].sort((a, b) => a - b);

/** Rows are 5 from the wall, and 1200 wide; the board is as long as the room, so that only a neck asks for a butt joint. */
const request = (depth: number, positions: number[], [low, high]: readonly [number, number], rules = {}): PlacementRequest => ({
  room: {
    outline: rectangle(4200, depth),
    openings: [
      {
        kind: 'hatch',
        outline: [
          { x: 1050, y: low },
          { x: 1650, y: low },
          { x: 1650, y: high },
          { x: 1050, y: high },
        ],
      },
    ],
  },
  joists: { direction: 'y', positions, width: 50 },
  boards: [{ id: '4800 x 1200', length: 4800, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
  rowWidths: Array.from({ length: Math.round(depth / 1210) }, () => 1200),
  rules,
});

const oneRow = (positions: number[], high: number, rules = {}): PlacementRequest => request(1210, positions, [150, high], rules);
const jointsOf = ({ pieces }: BoardLayout) =>
  pieces.flatMap(({ row, ends: [, high] }) => (high.meets === 'board' ? [{ row, at: high.position }] : []));
const necksTold = ({ findings }: BoardLayout) =>
  findings.filter(({ code }) => code === 'piece-neck-narrow').map(({ where, value }) => [where?.piece, value]);

const checked = ({ room, joists, boards, rules }: PlacementRequest, layout: BoardLayout) =>
  checkLayout({ room, joists, boards, layout, ...(rules && { rules }) });

describe('a piece with a neck that would snap', () => {
  it('is parted on a timber beside the hatch', () => {
    const layout = placeBoards(oneRow(timbersAnd(1025, 1675), 910));
    expect(necksTold(layout)).toEqual([]);
    expect(jointsOf(layout)).toHaveLength(1);
    expect([1025, 1675]).toContain(jointsOf(layout)[0].at);
    expect(placeBoards(oneRow(timbersAnd(1025), 910)).pieces.map(({ length }) => length)).toEqual([1020, 3170]);
  });

  it('is parted between the sides of the hatch, where a timber runs there', () => {
    const layout = placeBoards(oneRow(timbersAnd(1325), 910));
    expect(necksTold(layout)).toEqual([]);
    expect(jointsOf(layout).every(({ at }) => at === 1325)).toBe(true);
    expect(jointsOf(layout).length).toBeGreaterThan(0);
  });

  it('stays in one piece, and is told, where there is no timber', () => {
    // 1205 less 910 are left above the hatch, and 145 below it.
    const layout = placeBoards(oneRow(timbersAnd(), 910));
    expect(necksTold(layout)).toEqual([['1.1', 295]]);
    expect(layout.pieces).toHaveLength(1);
  });

  it('stays in one piece where a timber is too near the wall for a joint', () => {
    const request: PlacementRequest = { ...oneRow(timbersAnd(1025), 910), rules: { 'piece.minimumLength': 1100 } };
    expect(necksTold(placeBoards(request))).toEqual([['1.1', 295]]);
  });

  it('is none where 300 are left, or what the rules ask for', () => {
    for (const request of [
      oneRow(timbersAnd(1025, 1675), 905),
      oneRow(timbersAnd(1025, 1675), 910, { 'piece.minimumNeck': 295 }),
    ]) {
      const layout = placeBoards(request);
      expect(layout.pieces).toHaveLength(1);
      expect(necksTold(layout)).toEqual([]);
    }
  });

  it('is cut out for a light when it is up, and so in one piece', () => {
    const hatch = oneRow(timbersAnd(1025, 1675), 910);
    const openings = (hatch.room.openings ?? []).map((opening) => ({ ...opening, kind: 'light' as const }));
    expect(placeBoards({ ...hatch, room: { ...hatch.room, openings } }).pieces).toHaveLength(1);
  });
});

describe('a hatch in two rows', () => {
  // Rows of 5 to 1205 and 1205 to 2405, of which 295 are left at each wall.
  const twoRows = (...timbers: number[]) => request(2410, timbersAnd(...timbers), [300, 2110]);

  it('parts one on the one side and the other on the other', () => {
    const layout = placeBoards(twoRows(1025, 1675));
    expect(necksTold(layout)).toEqual([]);
    expect(
      jointsOf(layout)
        .map(({ at }) => at)
        .sort(),
    ).toEqual([1025, 1675]);
  });

  it('parts one of them where there is timber on one side only: two joints never lie on one joist', () => {
    const job = twoRows(1025);
    const layout = placeBoards(job);
    expect(jointsOf(layout)).toHaveLength(1);
    expect(necksTold(layout)).toHaveLength(1);
    expect(checked(job, layout).filter(({ severity }) => severity === 'error')).toEqual([]);
  });
});
