import { type PlacementRequest, placeBoards, planCeiling, rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { even, GAPS, ring, stock } from '../generators/scenario.js';

const TRIED = 'on the divisions into rows that were tried';

const plain: PlacementRequest = {
  room: { outline: rectangle(3600, 2400) },
  joists: even(25, 400, 3575),
  rules: GAPS,
  boards: [stock(2400)],
};
const last = ({ reasons }: { readonly reasons: readonly string[] }): string => reasons[reasons.length - 1];

describe('what is said of the least number of boards', () => {
  it('is said of all layouts in a plain rectangle', () => {
    const layout = placeBoards(plain);
    expect(layout.proven).toBe(true);
    expect(last(layout)).toBe(`No layout under these rules takes fewer than ${layout.bound}.`);
  });

  it('is said of the rows that were tried in a room of another shape, or with an opening', () => {
    const corner = { outline: ring([0, 0], [3600, 0], [3600, 1200], [2000, 1200], [2000, 2400], [0, 2400]) };
    const hatch = { kind: 'hatch' as const, outline: ring([1100, 500], [1500, 500], [1500, 900], [1100, 900]) };
    for (const room of [corner, { ...plain.room, openings: [hatch] }])
      expect(last(placeBoards({ ...plain, room }))).toContain(TRIED);
  });

  it('is said of the rows that were tried once a piece is up', () => {
    const [piece] = placeBoards(plain).pieces;
    const { id, outline, board } = piece;
    const locked = [{ id, outline, stock: '2400 x 1200', board }];
    expect(last(placeBoards({ ...plain, locked }))).toContain(TRIED);
  });

  it('is said of both layers alike', () => {
    const said = (room: PlacementRequest['room']) =>
      (planCeiling({ ...plain, room, lining: [], layers: 2 }).layers ?? []).map(({ layout }) => last(layout).includes(TRIED));
    expect(said(plain.room)).toEqual([false, false]);
    const splay = { outline: ring([0, 0], [3600, 0], [3500, 2400], [0, 2400]) };
    expect(said(splay)).toEqual([true, true]);
  });
});
