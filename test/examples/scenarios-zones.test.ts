import { type BoardLayout, type PlacementRequest, placeBoards, type Room, rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { codesOf, errorsIn, even, GAPS, ring, stock } from '../generators/scenario.js';

/** As a tradesperson would. */
const placed = (job: PlacementRequest) => placeBoards({ ...job, prefer: 'tradesperson' });
const xs = ({ outline }: BoardLayout['pieces'][number]) => outline.map(({ x }) => x);
const ys = ({ outline }: BoardLayout['pieces'][number]) => outline.map(({ y }) => y);
const jointsOf = (layout: BoardLayout, zone: string): number =>
  layout.pieces.filter((piece) => piece.zone === zone && piece.ends[0].meets === 'board').length;

describe('a through lounge: ceilings of 3400 and 3900 by 3600, a downstand of 250 between, joists at right angles', () => {
  const outline = ring([0, 0], [7550, 0], [7550, 3600], [0, 3600]);
  const room: Room = {
    outline,
    zones: [
      {
        id: 'front',
        outline: ring([0, 0], [3400, 0], [3400, 3600], [0, 3600]),
        joists: { direction: 'x', first: 50, spacing: 400, last: 3550, width: 50 },
      },
      {
        id: 'back',
        outline: ring([3650, 0], [7550, 0], [7550, 3600], [3650, 3600]),
        joists: { direction: 'y', first: 50, spacing: 400, last: 3850, width: 50 },
      },
    ],
  };
  const job = { room, joists: [], rules: GAPS, boards: [stock(2400)] };

  const layout = placed(job);

  it('is two zones, each boarded across its own joists, in one order of boards', () => {
    expect(new Set(layout.pieces.map(({ zone }) => zone))).toEqual(new Set(['front', 'back']));
    for (const piece of layout.pieces) {
      const [least, greatest] = [Math.min(...xs(piece)), Math.max(...xs(piece))];
      if (piece.zone === 'front') expect(greatest).toBeLessThanOrEqual(3400);
      else expect(least).toBeGreaterThanOrEqual(3650);
      // Long edges along y in the front, along x in the back, but for short closers.
      const [along, across] = [greatest - least, Math.max(...ys(piece)) - Math.min(...ys(piece))];
      expect(piece.zone === 'front' ? across : along).toBeCloseTo(piece.cutLength, 3);
    }
    expect(errorsIn(job, layout)).toEqual([]);
    // 26.28 m2 at 2.88 a board: ten are its area.
    expect(layout.boardsBought).toBe(10);
    expect(new Set(layout.pieces.map(({ board }) => board)).size).toBe(layout.boardsBought);
  });

  it('says that each side of the downstand wants a bead', () => {
    const { findings } = placed(job);
    expect(findings.filter(({ code }) => code === 'zone-border').length).toBeGreaterThan(0);
  });
});

describe('a bay of its own: 3900 by 3300, 700 deep, 2400 at the mouth and 1400 in front', () => {
  const outline = ring([0, 0], [3900, 0], [3900, 3300], [3150, 3300], [2650, 4000], [1250, 4000], [750, 3300], [0, 3300]);
  const bay = ring([750, 3300], [3150, 3300], [2650, 4000], [1250, 4000]);
  const room: Room = {
    outline,
    zones: [
      { id: 'bay', outline: bay, joists: { direction: 'y', positions: [790, 1150, 1550, 1950, 2350, 2750, 3110], width: 50 } },
    ],
  };
  const job = { room, joists: even(50, 400, 3850), rules: GAPS, boards: [stock(2400)] };

  it('is boarded by its own joists, with a straight joint at the mouth that no piece crosses', () => {
    const layout = placed(job);
    for (const piece of layout.pieces) {
      if (piece.zone === 'bay') expect(Math.min(...ys(piece))).toBeGreaterThanOrEqual(3300);
      else expect(Math.max(...ys(piece))).toBeLessThanOrEqual(3300);
    }
    expect(layout.pieces.some(({ zone }) => zone === 'bay')).toBe(true);
    expect(errorsIn(job, layout)).toEqual([]);
  });

  it('whose joists run the other way needs one near the mouth, or is told', () => {
    const across = (positions: readonly number[]): Room => ({
      outline,
      zones: [{ id: 'bay', outline: bay, joists: { direction: 'x', positions, width: 50 } }],
    });
    const atMouth = placed({ ...job, room: across([3330, 3650, 3970]) });
    expect(codesOf(atMouth).filter((code) => code === 'perimeter-overhang')).toEqual([]);
    const away = placed({ ...job, room: across([3500, 3750, 3970]) });
    // The joist at 3500 ends at the splay, at 892.857; the boards begin at 753.687: 139.17 along the mouth and 200 across it.
    expect(away.findings.filter(({ code }) => code === 'perimeter-overhang').map(({ value }) => value)).toEqual([243.656]);
  });
});

describe('a knock-through, 3300 by 6400, with a flush beam at 3600', () => {
  const outline = ring([0, 0], [3300, 0], [3300, 6400], [0, 6400]);
  const room: Room = {
    outline,
    zones: [
      {
        id: 'A',
        outline: ring([0, 0], [3300, 0], [3300, 3600], [0, 3600]),
        joists: { direction: 'y', first: 60, spacing: 400, width: 50 },
      },
      {
        id: 'B',
        outline: ring([0, 3600], [3300, 3600], [3300, 6400], [0, 6400]),
        joists: { direction: 'y', first: 150, spacing: 600, width: 50 },
      },
    ],
  };
  const job = (thickness: number) => ({ room, joists: [], rules: GAPS, boards: [stock(3000, 1200, { thickness })] });

  const layout = placed(job(15));

  it('has a row edge and a bead at the beam, and no piece across it', () => {
    for (const piece of layout.pieces) {
      expect(Math.max(...ys(piece)) <= 3600 || Math.min(...ys(piece)) >= 3600).toBe(true);
    }
    expect(codesOf(layout)).toContain('zone-border');
    expect(layout.rows.map(({ zone }) => zone)).toEqual(['A', 'A', 'A', 'B', 'B', 'B']);
    expect(errorsIn(job(15), layout)).toEqual([]);
  });

  it('takes at most four boards and three butt joints on one side, three and four on the other', () => {
    expect(layout.boardsBought).toBeLessThanOrEqual(7);
    expect(2 * layout.boardsBought + layout.endJoints).toBeLessThanOrEqual(21);
    expect(jointsOf(layout, 'A')).toBeLessThanOrEqual(3);
    expect(jointsOf(layout, 'B')).toBeLessThanOrEqual(4);
  });

  it('is 15 thick on both sides, or departs from the table where it is 12.5', () => {
    const bays = (thickness: number) =>
      placed(job(thickness))
        .findings.filter(({ code }) => code === 'support-centres-exceeded')
        .map(({ value }) => value);
    expect(bays(15)).toEqual([]);
    expect(bays(12.5)).toEqual([600]);
  });
});

describe('two ceilings of 3600 by 1800 with a downstand of 200 between, a window in a wall along the rows', () => {
  const outline = rectangle(3600, 3800);
  const joists = even(100, 400, 3500);
  const zones = [
    { id: 'front', outline: rectangle(3600, 1800), joists },
    { id: 'back', outline: ring([0, 2000], [3600, 2000], [3600, 3800], [0, 3800]), joists },
  ];

  it.each([
    ['front', 0],
    ['back', 2],
  ])('the %s one begins with a full row at its window, whichever side that is on', (zone, edge) => {
    for (const windows of [[edge], [0, 2]]) {
      const walls = windows.map((each) => ({ edge: each, window: true }));
      const layout = placed({ room: { outline, zones, walls }, joists: [], boards: [stock(2400)] });
      expect(codesOf(layout)).not.toContain('window-row-ripped');
      const own = layout.rows.filter((row) => row.zone === zone);
      expect(own.map(({ ripped }) => ripped)).toEqual(zone === 'front' ? [false, true] : [true, false]);
    }
  });
});
