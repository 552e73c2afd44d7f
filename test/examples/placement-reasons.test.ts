import { comparePlacements, type PlacementRequest, placeBoards, planCeiling, rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { even, GAPS, ring, stock } from '../generators/scenario.js';

const FULL = 'on full rows with at most one ripped at each side';
const ROUND = 'on the rows that go on from what is up';

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

  it('is said of full rows, one ripped at each side, in a room of another shape, or with an opening', () => {
    const corner = { outline: ring([0, 0], [3600, 0], [3600, 1200], [2000, 1200], [2000, 2400], [0, 2400]) };
    const hatch = { kind: 'hatch' as const, outline: ring([1100, 500], [1500, 500], [1500, 900], [1100, 900]) };
    for (const room of [corner, { ...plain.room, openings: [hatch] }])
      expect(last(placeBoards({ ...plain, room }))).toContain(FULL);
  });

  it('is said of the rows that go on from a piece that is up', () => {
    const [piece] = placeBoards(plain).pieces;
    const { id, outline, board } = piece;
    const locked = [{ id, outline, stock: '2400 x 1200', board }];
    expect(last(placeBoards({ ...plain, locked }))).toContain(ROUND);
  });

  it('is said of both layers alike', () => {
    const said = (room: PlacementRequest['room']) =>
      (planCeiling({ ...plain, room, lining: [], layers: 2 }).layers ?? []).map(({ layout }) => last(layout).includes(FULL));
    expect(said(plain.room)).toEqual([false, false]);
    const splay = { outline: ring([0, 0], [3600, 0], [3500, 2400], [0, 2400]) };
    expect(said(splay)).toEqual([true, true]);
  });
});

describe('what is said of the area', () => {
  it('is of the pieces as cut, not of the rectangles about them', () => {
    // 7.93 m2 of pieces in a triangle of 8; a board has 2.88.
    const layout = placeBoards({ ...plain, room: { outline: ring([0, 0], [4000, 0], [0, 4000]) }, joists: even(50, 400, 3950) });
    expect(layout.areaM2).toBeLessThan(3 * 2.88);
    expect(layout.reasons[0]).toMatch(/^The area alone would take 3 boards;/);
  });
});

describe('what is said of boards beyond the fewest', () => {
  const kitchen: PlacementRequest = {
    room: { outline: rectangle(2750, 3310) },
    joists: even(60, 450, 2690),
    boards: [{ ...stock(1800), width: 900 }],
  };

  it('is that they are this layout, not that joints and stagger take them', () => {
    const fewest = placeBoards({ ...kitchen, prefer: 'boards' });
    const more = placeBoards({ ...kitchen, prefer: 'joints' });
    expect(more.boardsBought).toBeGreaterThan(fewest.boardsBought);
    expect(fewest.proven).toBe(true);
    expect(more.reasons[0]).toBe(`The area alone would take 6 boards; this layout takes ${more.boardsBought}.`);
    expect(more.reasons.join(' ')).not.toMatch(/staggered/);
  });

  it('is what they are for, beside a layout that does with fewer', () => {
    const layouts = comparePlacements(kitchen);
    const [{ boardsBought: fewest, proven }] = layouts;
    expect(proven).toBe(true);
    const others = layouts.filter(({ boardsBought }) => boardsBought > fewest);
    expect(others.length).toBeGreaterThan(0);
    for (const layout of others) {
      expect(layout.reasons).toContain(
        `${fewest} will do: ${layout.boardsBought - fewest} more for fewer butt joints, short pieces or cuts.`,
      );
      expect(last(layout)).toBe(`No layout under these rules takes fewer than ${fewest}.`);
    }
  });

  it('does not take for the fewest butt joints those of the layout with the fewest short pieces', () => {
    const room = { outline: rectangle(2130, 3300) };
    const layouts = comparePlacements({ ...kitchen, room, joists: even(40, 400, 2080) });
    const fewest = layouts.filter(({ boardsBought }) => boardsBought === layouts[0].boardsBought);
    const [{ endJoints }] = fewest;
    expect(fewest.length).toBeGreaterThan(1);
    expect(fewest.map((layout) => layout.piecesProven)).toEqual(fewest.map((layout) => layout.endJoints === endJoints));
  });
});
