import { type BoardLayout, outlineFromSides, type PlacementRequest, placeBoards, planCeiling } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { codesOf, errorsIn, even, GAPS, ring, stock } from '../generators/scenario.js';

const both = (request: PlacementRequest): BoardLayout[] => [placeBoards(request), planCeiling({ ...request, lining: [] }).layout];
const isRectangle = ({ outline }: BoardLayout['pieces'][number]): boolean =>
  outline.length === 4 && outline.every(({ x, y }, i) => x === outline[(i + 1) % 4].x || y === outline[(i + 1) % 4].y);

describe('a parallelogram: sides of 4200 and 3000, diagonals 5120 and 5203', () => {
  const { outline, outOfSquare } = outlineFromSides({ sides: [4200, 3000, 4200, 3000], diagonals: [5120, 5203] });
  const request = { room: { outline }, joists: even(200, 400), rules: GAPS, boards: [stock(2400)] };

  it('is 51 out of square over 3000', () => {
    expect(Math.round(Math.abs(outOfSquare))).toBe(51);
  });

  it('is boarded in rows square to the joists, and each piece at a leaning wall has two edges of different length', () => {
    for (const layout of both(request)) {
      expect(errorsIn(request, layout)).toEqual([]);
      const atWalls = layout.pieces.filter(({ ends }) => ends[0].meets === 'wall' || ends[1].meets === 'wall');
      expect(atWalls.length).toBeGreaterThanOrEqual(2 * layout.rows.length);
      for (const { edgeLengths, width, ends } of atWalls) {
        if (ends[0].meets === ends[1].meets) continue;
        // 51 in 3000: about 20 in a row of 1200.
        expect(Math.abs((edgeLengths?.high ?? 0) - (edgeLengths?.low ?? 0))).toBeCloseTo((width * 51) / 3000, 0);
      }
      for (const { low, high, width } of layout.rows) expect(high - low).toBeCloseTo(width, 3);
    }
  });

  it('tells how far the leaning walls are from the joists there', () => {
    const [layout] = both(request);
    const found = layout.findings.filter(({ code }) => code === 'perimeter-overhang');
    // The first joist is 200 from the one end of the wall and 149 from the other.
    expect(found[0].value).toBeCloseTo(200, 0);
    expect(found[0].where?.joist).toBe('J1');
  });
});

describe('a bowed wall, 18 in the middle of 4400', () => {
  const bow = Array.from({ length: 9 }, (_, k): readonly [number, number] => {
    const x = 4400 - 550 * k;
    return [x, 3500 + Math.round((18 * x * (4400 - x)) / 2200 ** 2)];
  });
  const request = { room: { outline: ring([0, 0], [4400, 0], ...bow) }, joists: even(100, 400, 4300), boards: [stock(2400)] };

  it('is taken up by one scribed row, and the others are square', () => {
    for (const layout of both(request)) {
      expect(errorsIn(request, layout)).toEqual([]);
      const scribed = new Set(layout.pieces.filter((piece) => !isRectangle(piece)).map(({ row }) => row));
      expect([...scribed]).toEqual([layout.rows.length]);
    }
  });
});

describe('an L: 4800 by 3600 less a corner of 1500 by 1200', () => {
  const outline = ring([0, 0], [4800, 0], [4800, 2400], [3300, 2400], [3300, 3600], [0, 3600]);
  // One of the joists is at the corner that stands in the room.
  const joists = even(100, 400, 4700);
  const request = { room: { outline }, joists, rules: GAPS, boards: [stock(2400)] };
  /** The gap at a wall, and how accurate a cut is. */
  const beside = (gap: number): number => gap + 2;

  it.each([
    ['with gaps of 3', request, beside(3)],
    ['by the rules as they are', { ...request, rules: {} }, beside(10)],
  ])('%s is boarded in rows that run through, with no joint that begins at the corner', (_, job, least) => {
    for (const layout of both(job)) {
      expect(errorsIn(job, layout)).toEqual([]);
      // 15.48 m2, of which a board covers 2.88.
      expect(layout.boardsBought).toBeGreaterThanOrEqual(6);
      expect(layout.boardsBought).toBeLessThanOrEqual(7);
      const edges = layout.rows.slice(0, -1).map(({ high }) => high);
      expect(edges.filter((edge) => Math.abs(edge - 2400) <= least)).toEqual([]);
      for (const { row, low, high } of layout.rows) {
        if (high > 2400 || low > 2400) continue;
        const xs = layout.pieces.filter((piece) => piece.row === row).flatMap(({ outline: of }) => of.map(({ x }) => x));
        const { length, ...ends } = { length: xs.length, least: Math.min(...xs), greatest: Math.max(...xs) };
        expect(length).toBeGreaterThan(0);
        expect(ends).toEqual(job === request ? { least: 3, greatest: 4797 } : { least: 5, greatest: 4795 });
      }
    }
  });

  it('would have a long joint at the corner in the fewest rows, from the wall on', () => {
    const { rows, findings } = placeBoards({ ...request, rules: {}, rowWidths: [1200, 1200, 1190] });
    expect(rows.map(({ high }) => high)).toEqual([1205, 2405, 3595]);
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  });
});

describe('a ceiling inside a coving of 83 that stays, 3000 by 2800', () => {
  const [left, right, low, high] = [83, 3000 - 83, 83, 2800 - 83];
  const request = {
    room: { outline: ring([left, low], [right, low], [right, high], [left, high]) },
    joists: { direction: 'y' as const, positions: [120, 520, 920, 1320, 1720, 2120, 2520, 2880], width: 50 },
    rules: GAPS,
    boards: [stock(2400)],
  };

  it('is boarded up to the coving less the gap, in smaller boards', () => {
    for (const layout of both(request)) {
      expect(errorsIn(request, layout)).toEqual([]);
      const points = layout.pieces.flatMap(({ outline }) => outline);
      expect(Math.min(...points.map(({ x }) => x))).toBe(left + 3);
      expect(Math.max(...points.map(({ x }) => x))).toBe(right - 3);
      expect(layout.rows[layout.rows.length - 1].high).toBe(high - 3);
      expect(codesOf(layout)).not.toContain('perimeter-overhang');
    }
  });
});
