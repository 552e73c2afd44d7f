import { checkBound, type Joist, type PlacementRequest, placeBoards, tryPlaceBoards } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { errorsIn, joistAt, ring, stock } from '../generators/scenario.js';

const upright = (places: readonly number[], depth: number): Joist[] =>
  places.map((x, at) => ({ ...joistAt(`J${at + 1}`, x, 0, depth), width: 47 }));

/** A far wall 1 mm out of square; the first two joists are so near the wall that its least piece is a matter of a few mm. */
const rooms: { name: string; request: PlacementRequest; rowWidths: number[] }[] = [
  {
    name: '2713 x 5413',
    request: {
      room: { outline: ring([0, 0], [2713, 0], [2712, 5413], [0, 5413]) },
      joists: upright([25, 310, 1351, 2126, 2689], 5413),
      boards: [stock(2400, 900)],
    },
    rowWidths: Array.from({ length: 6 }, () => 900),
  },
  {
    name: '2710 x 7214',
    request: {
      room: { outline: ring([0, 0], [2710, 0], [2709, 7214], [0, 7214]) },
      joists: upright([25, 308, 1377, 2136, 2686], 7214),
      boards: [stock(2400, 1200)],
    },
    rowWidths: Array.from({ length: 6 }, () => 1200),
  },
];

describe('the bound of a room 1 mm out of square', () => {
  it.each(rooms)('of $name is no more than a layout on full rows takes', ({ request, rowWidths }) => {
    const onFullRows = placeBoards({ ...request, rowWidths });
    expect(errorsIn(request, onFullRows)).toEqual([]);
    const layout = placeBoards(request);
    expect(layout.bound).toBeLessThanOrEqual(onFullRows.boardsBought);
    expect(layout.boardsBought).toBeLessThanOrEqual(onFullRows.boardsBought);
    const { certificate } = layout;
    if (certificate === undefined) throw new Error('there is no certificate');
    expect(checkBound({ request, certificate, bound: onFullRows.boardsBought + 1 })).toBe(false);
  });
});

describe('joists that run far from square to the walls', () => {
  // 800 aside in each metre, a timber every 400 along the rows; so raked, hardly a piece comes out of a board of 1200.
  const joists = Array.from({ length: 16 }, (_, k): Joist => {
    const x = 400 * k - 2200;
    return { ...joistAt(`J${k + 1}`, x, 0, 3000), end: { x: x + 2400, y: 3000 }, width: 47 };
  });
  const request: PlacementRequest = {
    room: { outline: ring([0, 0], [4000, 0], [4000, 3000], [0, 3000]) },
    joists,
    boards: [stock(1200)],
  };

  it('are told of where no layout is found, with what helps', () => {
    const attempt = tryPlaceBoards(request);
    if (attempt.ok || attempt.reason !== 'infeasible') throw new Error('it was laid');
    expect(attempt.findings.map(({ code }) => code)).toEqual(['no-layout', 'rows-askew']);
    expect(attempt.findings[1]).toMatchObject({ value: 960, limit: 47 });
  });
});
