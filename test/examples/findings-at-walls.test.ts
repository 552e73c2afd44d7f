import { type End, type Joist, joistsFromPositions, type Piece, type Point, placeBoards, rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { findingsByHand, rowByHand } from '../generators/findingsByHand.js';
import { handLaidPiece, joint, wall } from '../generators/handLaid.js';

const ring = (...at: readonly (readonly [number, number])[]): Point[] => at.map(([x, y]) => ({ x, y }));

/** A piece with an outline of its own, in one row. */
function shaped(id: string, row: number, ends: readonly [End, End], outline: readonly Point[]): Piece {
  const levels = outline.map(({ y }) => y);
  const [low, high] = [Math.min(...levels), Math.max(...levels)];
  return { ...handLaidPiece({ id, ends, low, high }), row, outline };
}

const overhangs = (by: Parameters<typeof findingsByHand>[0]) =>
  findingsByHand(by)
    .filter(({ code }) => code === 'perimeter-overhang')
    .map(({ value, where }) => ({ value, wall: where?.wall, joist: where?.joist }));

describe('board beyond the last joist at a wall', () => {
  const room = { outline: rectangle(2390, 1210) };
  const pieces = [handLaidPiece({ id: '1.1', ends: [wall(5), wall(2385)], low: 5, high: 1205 })];
  const rows = [rowByHand(1, 5, 1205)];
  const at = (positions: readonly number[], width = 50) => joistsFromPositions({ room, direction: 'y', positions, width });

  it('is measured from the middle of the joist to the wall, at each wall, with a remedy from below', () => {
    const joists = at([160, 600, 1000, 1400, 1800, 2180]);
    expect(overhangs({ room, joists, pieces, rows })).toEqual([
      { value: 210, wall: 1, joist: 'J6' },
      { value: 160, wall: 3, joist: 'J1' },
    ]);
    const [found] = findingsByHand({ room, joists, pieces, rows }).filter(({ code }) => code === 'perimeter-overhang');
    expect(found).toMatchObject({ severity: 'warning', limit: 150, source: { standing: 'practice' } });
    expect(found.remedy).toMatch(/strip of the old ceiling 150 to 200 wide.*noggings.*Lath is no support/);
  });

  it('is nothing up to the limit', () => {
    expect(overhangs({ room, joists: at([150, 600, 1000, 1400, 1800, 2240]), pieces, rows })).toEqual([]);
  });

  it('is less where a batten runs along the wall', () => {
    const joists = at([200, 600, 1000, 1400, 1800, 2345]);
    const batten: Joist = { ...joists[0], id: 'batten', kind: 'batten', start: { x: 25, y: 0 }, end: { x: 25, y: 1210 } };
    expect(overhangs({ room, joists, pieces, rows }).map(({ value }) => value)).toEqual([200]);
    expect(overhangs({ room, joists: [batten, ...joists], pieces, rows })).toEqual([]);
  });

  it('counts only joists that really run there: one cut short at a trimmer carries nothing beyond it', () => {
    const joists = at([45, 400, 800, 1200, 1600, 2000, 2345]);
    const short = joists.map((each) => (each.id === 'J1' ? { ...each, end: { ...each.end, y: 500 } } : each));
    expect(overhangs({ room, joists: short, pieces, rows })).toEqual([
      { value: 710, wall: 2, joist: 'J1' },
      { value: 400, wall: 3, joist: 'J2' },
    ]);
    const trimmer: Joist = { ...joists[0], id: 'T', kind: 'trimmer', start: { x: 0, y: 1150 }, end: { x: 400, y: 1150 } };
    // Half way up the wall between J1, at 45, and the trimmer: 1150 - v and the root of 45 * 45 + (v - 500) * (v - 500) are alike.
    expect(overhangs({ room, joists: [...short, trimmer], pieces, rows })).toEqual([{ value: 326.557, wall: 3, joist: 'J1' }]);
  });
});

describe('board beyond the last joist in a room that is no rectangle', () => {
  it('is told for each wall of an L', () => {
    const room = { outline: ring([0, 0], [2400, 0], [2400, 1205], [1250, 1205], [1250, 2410], [0, 2410]) };
    const joists = joistsFromPositions({ room, direction: 'y', positions: [45, 450, 850, 1230, 1650, 2050, 2220], width: 50 });
    const stopped = joists.filter(({ id }) => id !== 'J4');
    const pieces = [
      handLaidPiece({ id: '1.1', ends: [wall(5), wall(2395)], low: 5, high: 1205 }),
      { ...handLaidPiece({ id: '2.1', ends: [wall(5), wall(1245)], low: 1205, high: 2405 }), row: 2 },
    ];
    const rows = [rowByHand(1, 5, 1205), rowByHand(2, 1205, 2405)];
    expect(overhangs({ room, joists, pieces, rows })).toEqual([{ value: 180, wall: 1, joist: 'J7' }]);
    expect(overhangs({ room, joists: stopped, pieces, rows })).toEqual([
      { value: 180, wall: 1, joist: 'J7' },
      { value: 400, wall: 3, joist: 'J3' },
    ]);
  });

  it('is greatest where a wall leans away, and between two joists that run into a splay', () => {
    const room = { outline: ring([0, 0], [2400, 0], [2400, 610], [1800, 1210], [60, 1210]) };
    const joists = joistsFromPositions({ room, direction: 'y', positions: [200, 600, 1000, 1400, 1800, 2200, 2380], width: 50 });
    const outline = ring([5, 5], [2395, 5], [2395, 607], [1797, 1205], [65, 1205]);
    const pieces = [shaped('1.1', 1, [wall(5), wall(2395)], outline)];
    const found = overhangs({ room, joists, pieces, rows: [rowByHand(1, 5, 1205)] });
    expect(found.map((each) => each.wall)).toEqual([2, 4]);
    // Between 1800 and 2200, where the one is as far as the end of the other: 400 * root 2 / (1 + root 2).
    expect(found[0].value).toBeCloseTo(234.315, 2);
    expect(found[1].joist).toBe('J1');
    expect(found[1].value).toBeCloseTo(199.752, 3);
  });
});

describe('board beyond the last joist at the border of a zone', () => {
  it('is told of the zone whose boards hang over, with another remedy than at a wall', () => {
    const zone = (id: string, from: number, positions: readonly number[]) => ({
      id,
      outline: ring([from, 0], [from + 1200, 0], [from + 1200, 1210], [from, 1210]),
      joists: { direction: 'y' as const, positions, width: 50 },
    });
    const room = { outline: rectangle(2400, 1210), zones: [zone('A', 0, [45, 600, 1060]), zone('B', 1200, [1400, 1800, 2355])] };
    const piece = (id: string, zoneId: string, row: number, from: number, to: number) => ({
      ...handLaidPiece({ id, ends: [wall(from), wall(to)], low: 5, high: 1205 }),
      row,
      zone: zoneId,
    });
    const pieces = [piece('1.1', 'A', 1, 5, 1200), piece('2.1', 'B', 2, 1200, 2395)];
    const rows = [
      { ...rowByHand(1, 5, 1205), zone: 'A' },
      { ...rowByHand(2, 5, 1205), zone: 'B' },
    ];
    const found = findingsByHand({ room, joists: [], pieces, rows }).filter(({ code }) => code === 'perimeter-overhang');
    expect(found.map(({ value, where }) => [value, where?.joist, where?.wall])).toEqual([[200, 'B J1', undefined]]);
    expect(found[0].message).toMatch(/^The border/);
    expect(found[0].remedy).toMatch(/along the border/);
  });
});

describe('a piece notched round a breast', () => {
  // The breast is 600 wide and 400 deep, between joists at 650 and at 1650; those between end at it.
  const outline = ring([0, 0], [2400, 0], [2400, 1210], [1500, 1210], [1500, 810], [900, 810], [900, 1210], [0, 1210]);
  const room = { outline };
  const joists = joistsFromPositions({
    room,
    direction: 'y',
    positions: [45, 350, 650, 1050, 1350, 1650, 2000, 2355],
    width: 50,
  });
  const notched = ring([5, 5], [2395, 5], [2395, 1205], [1505, 1205], [1505, 805], [895, 805], [895, 1205], [5, 1205]);
  const pieces = [shaped('1.1', 1, [wall(5), wall(2395)], notched)];
  const by = { room, joists, pieces, rows: [rowByHand(1, 5, 1205)] };

  it('hangs over beside the breast', () => {
    // On the other side the joist is 150 away, and that will do.
    expect(overhangs(by)).toEqual([{ value: 250, wall: 5, joist: 'J3' }]);
  });

  it('does not span the breast', () => {
    expect(findingsByHand(by).map(({ code }) => code)).not.toContain('support-centres-exceeded');
  });
});

describe('the widest bay', () => {
  it('is looked for where joists fan out and where one stops short', () => {
    const room = { outline: rectangle(2390, 1210) };
    const positions = [45, 445, 845, { atStart: 1245, atEnd: 1320 }, 1645, 2045, 2345];
    const joists = joistsFromPositions({ room, direction: 'y', positions, width: 50 });
    const pieces = [handLaidPiece({ id: '1.1', ends: [wall(5), wall(2385)], low: 5, high: 1205 })];
    const rows = [rowByHand(1, 5, 1205)];
    const widest = (of: readonly Joist[]) =>
      findingsByHand({ room, joists: of, pieces, rows }).find(({ code }) => code === 'support-centres-exceeded');
    expect(widest(joists)).toMatchObject({ where: { joist: 'J4' }, value: 474.69 });
    const trimmed = joists.map((each) => (each.id === 'J3' ? { ...each, end: { ...each.end, y: 700 } } : each));
    expect(widest(trimmed)).toMatchObject({ where: { joist: 'J4' }, value: 874.69 });
  });

  describe('where a joist is cut for a hatch', () => {
    const room = { outline: rectangle(3600, 3000) };
    const rows = [rowByHand(1, 900, 2100)];
    // Trimmers 800 apart joist to joist and `apart` along them; the hatch between them cut out of the piece.
    const found = (hatch: { readonly low: number; readonly high: number }, apart: readonly [number, number]) => {
      const whole = joistsFromPositions({ room, direction: 'y', positions: [850, 1250, 1650, 2050, 2450], width: 50 });
      const joists = whole.flatMap((each): Joist[] => {
        if (each.id !== 'J3') return [each];
        const [below, above] = apart;
        return [
          { ...each, end: { ...each.end, y: below } },
          { ...each, id: 'J3b', start: { ...each.start, y: above } },
        ];
      });
      const holes = [ring([1274, hatch.low], [2026, hatch.low], [2026, hatch.high], [1274, hatch.high])];
      const piece = handLaidPiece({ id: '1.1', ends: [joint(850, 'J1'), joint(2450, 'J5')], low: 900, high: 2100, holes });
      return findingsByHand({ room, joists, pieces: [piece], rows }).filter(({ code }) => code === 'support-centres-exceeded');
    };

    it('is not the hatch, nor the strip of board on each trimmer', () => {
      expect(found({ low: 1200, high: 1900 }, [1176, 1924])).toEqual([]);
    });

    it('is what board there is between the joists beyond a hatch that is less than the trimmers leave', () => {
      expect(found({ low: 1200, high: 1500 }, [1176, 1924])).toMatchObject([{ value: 800, where: { joist: 'J4' } }]);
    });
  });
});

describe('pieces of rows that are split', () => {
  it('meet at a butt joint only where both say so', () => {
    const room = { outline: rectangle(4800, 1210) };
    const joists = joistsFromPositions({
      room,
      direction: 'y',
      positions: [40, 445, 845, 1245, 1645, 2045, 2445, 2845, 3245, 3645, 4045, 4445, 4760],
      width: 50,
    });
    const opening = (position: number): End => ({ meets: 'opening', position, made: 'cut' });
    const pieces = [
      handLaidPiece({ id: '1.1', ends: [wall(5), opening(1645)], low: 5, high: 1205 }),
      handLaidPiece({ id: '1.2', ends: [opening(2445), joint(3645, 'J10')], low: 5, high: 1205 }),
      handLaidPiece({ id: '1.3', ends: [joint(3645, 'J10'), wall(4795)], low: 5, high: 1205 }),
    ];
    const walls = [{ edge: 1, window: true }];
    const found = findingsByHand({ room: { ...room, walls }, joists, pieces, rows: [rowByHand(1, 5, 1205)] });
    expect(found.filter(({ code }) => code === 'raking-light').map(({ where }) => where?.pieces)).toEqual([['1.2', '1.3']]);
  });
});

it('a plan tells what the wall is away from its last joist, not what the board is', () => {
  const layout = placeBoards({
    room: { outline: rectangle(3560, 2930) },
    joists: { direction: 'y', first: 150, spacing: 400, width: 50 },
    boards: [{ id: '3000', length: 3000, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
  });
  const found = layout.findings.filter(({ code }) => code === 'perimeter-overhang');
  expect(found.map(({ value, where }) => [value, where?.joist])).toEqual([[210, 'J9']]);
});
