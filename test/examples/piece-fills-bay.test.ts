import { placeBoards } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { joistAt } from '../generators/scenario.js';

/** A room with a recess 300 deep and 500 wide on its far side; the joists are 400 apart, and one or two of them run into the recess. */
const planned = (first: number) => {
  const places = Array.from({ length: 9 }, (_, k) => first + 400 * k);
  const outline = [
    { x: 0, y: 0 },
    { x: 3600, y: 0 },
    { x: 3600, y: 2410 },
    { x: 2000, y: 2410 },
    { x: 2000, y: 2710 },
    { x: 1500, y: 2710 },
    { x: 1500, y: 2410 },
    { x: 0, y: 2410 },
  ];
  const joists = places.map((x, i) => joistAt(`J${i + 1}`, x, 0, x > 1500 && x < 2000 ? 2710 : 2410));
  const boards = [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' as const }];
  return placeBoards({ room: { outline }, joists, boards, rowWidths: [1200, 1200, 294] });
};

const told = (first: number) => planned(first).findings.filter(({ code }) => code === 'piece-on-one-support');

describe('a piece that fills a recess from wall to wall', () => {
  it('is warned of where one joist runs there', () => {
    // 100 + 4 x 400 = 1700; the next at 2100.
    expect(told(100)).toMatchObject([{ severity: 'warning', where: { piece: '3.1', row: 3, joist: 'J5' }, value: 1, limit: 2 }]);
  });

  it('is not where two do', () => {
    // 350 + 3 x 400 = 1550 and 1950.
    expect(told(350)).toEqual([]);
  });
});
