import { checkLayout, type PlacementRequest, placeBoards, rectangle, tryPlaceBoards } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { joistAt } from '../generators/scenario.js';

/** One row from 5 to 1205, its joint on the joist at 1500; each piece has three joists if the one at 2000, which ends 300 into the row, is one of them. */
const room = (length: number): PlacementRequest => ({
  room: { outline: rectangle(3000, 1210), openings: [{ kind: 'light', centre: { x: 300, y: 600 }, diameter: 70 }] },
  joists: [...[100, 800, 1500, 2900].map((x) => joistAt(`J${x}`, x, 0, 1210)), joistAt('J2000', 2000, 0, 305)],
  boards: [{ id: '1800', length: 1800, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
  rules: { 'piece.minimumSupports': 3, 'piece.supportLength': length },
});

describe('a joist that ends under a piece', () => {
  it('counts as a support when it is there for as long as the rules say', () => {
    expect(placeBoards(room(300)).pieces.map(({ length }) => length)).toEqual([1495, 1495]);
    expect(tryPlaceBoards(room(301))).toMatchObject({ ok: false, reason: 'infeasible' });
  });

  it('is judged alike by the check', () => {
    const layout = placeBoards(room(300));
    const onTooFew = (length: number) =>
      checkLayout({ ...room(length), layout }).flatMap(({ code, value }) => (code === 'piece-on-one-support' ? [value] : []));
    expect(onTooFew(300)).toEqual([]);
    expect(onTooFew(301)).toEqual([2]);
  });
});
