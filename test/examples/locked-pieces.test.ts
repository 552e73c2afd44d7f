import {
  type BoardStock,
  checkLayout,
  type LockedPiece,
  type PlacementRequest,
  placeBoards,
  rectangle,
  tryPlaceBoards,
} from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { block } from '../generators/layoutsByHand.js';

const board = (length: number, more: Partial<BoardStock> = {}): BoardStock => ({
  id: `${length}`,
  length,
  width: 1200,
  thickness: 12.5,
  massPerArea: 8.4,
  edge: 'square',
  ...more,
});

/** 3600 across the joists by 3000; joists at 25 + 400 k and 3575. */
const room: PlacementRequest = {
  room: { outline: rectangle(3600, 3000) },
  joists: { direction: 'y', first: 25, spacing: 400, last: 3575, width: 50 },
  boards: [board(2400)],
};

const errorsOf = (request: PlacementRequest, layout = placeBoards(request)) =>
  checkLayout({ room: request.room, joists: request.joists, boards: request.boards, layout }).filter(
    ({ severity }) => severity === 'error',
  );

const problemsOf = (locked: readonly LockedPiece[], more: Partial<PlacementRequest> = {}) => {
  const attempt = tryPlaceBoards({ ...room, ...more, locked });
  if (attempt.ok || attempt.reason !== 'input') throw new Error('the pieces were accepted');
  return attempt.problems.map(({ code, path }) => `${code} ${path}`);
};

/** The low row from wall to wall: joint on the joist at 1625. */
const lowRow = [{ outline: block(5, 1623.5, 5, 1205) }, { outline: block(1626.5, 3595, 5, 1205) }];

describe('pieces that are up', () => {
  it('stay where they are, take no board, and keep the stagger of the row beside them', () => {
    const { pieces, boards, boardsBought } = placeBoards({ ...room, locked: lowRow });
    expect(pieces.filter(({ locked }) => locked).map(({ id, outline, ends }) => [id, outline, ends[0].position])).toEqual([
      ['1.1', lowRow[0].outline, 5],
      ['1.2', lowRow[1].outline, 1625],
    ]);
    expect(boards.filter(({ opened }) => opened).map(({ id }) => id)).toEqual(['U1', 'U2']);
    expect(boardsBought).toBe(boards.length - 2);
    const second = pieces.filter(({ row }) => row === 2).map(({ ends }) => ends[0]);
    for (const { meets, position } of second)
      if (meets === 'board') expect(Math.abs(position - 1625)).toBeGreaterThanOrEqual(300);
    expect(errorsOf({ ...room, locked: lowRow })).toEqual([]);
  });

  it('in the middle of the room pin the rows on both sides of them', () => {
    const locked = [{ outline: block(426.5, 2823.5, 1100, 2300) }];
    const layout = placeBoards({ ...room, locked });
    expect(layout.rows.map(({ low, high }) => [low, high])).toEqual([
      [5, 1100],
      [1100, 2300],
      [2300, 2995],
    ]);
    expect(layout.pieces.filter(({ row }) => row === 2).map(({ id, locked: up, length }) => [id, up, length])).toEqual([
      ['2.1', undefined, 420],
      ['2.2', true, 2400],
      ['2.3', undefined, 770],
    ]);
    expect(errorsOf({ ...room, locked }, layout)).toEqual([]);
  });

  it('are cut from boards that are not bought again: a layout that counts them is refused', () => {
    const layout = placeBoards({ ...room, locked: lowRow });
    const found = errorsOf(room, { ...layout, boardsBought: layout.boards.length });
    expect(found).toMatchObject([{ code: 'claim-wrong', value: layout.boards.length, limit: layout.boardsBought }]);
  });

  it('of a whole layout leave nothing to buy', () => {
    const { pieces } = placeBoards(room);
    const again = placeBoards({ ...room, locked: pieces });
    expect(again).toMatchObject({ boardsBought: 0, bound: 0, proven: true, boardsAtMinimumLength: 0, boardsByStock: [] });
    expect(again.pieces.map(({ locked, ...piece }) => ({ ...piece, locked }))).toEqual(
      pieces.map((piece) => ({ ...piece, locked: true })),
    );
  });

  it('on boards that they name share them, as far as these reach', () => {
    const locked = lowRow.map((piece) => ({ ...piece, board: 'first' }));
    expect(problemsOf(locked)).toEqual(['board-overcut locked[0].board']);
    const long = { ...room, boards: [board(2400), board(3600)], locked };
    const { boards } = placeBoards(long);
    expect(boards.find(({ id }) => id === 'first')).toMatchObject({ stock: '3600', opened: true });
    expect(errorsOf(long)).toEqual([]);
  });

  it('that end over no joist are an error, told with what can be done from below', () => {
    const locked = [{ outline: block(5, 1798.5, 5, 1205) }];
    const { findings, pieces } = placeBoards({ ...room, locked });
    const [first] = findings;
    expect(first).toMatchObject({ code: 'end-off-timber', severity: 'error', where: { pieces: ['1.1', '1.2'], row: 1 } });
    expect(first.remedy).toContain('strip of the old ceiling');
    expect(pieces[1].ends[0]).toMatchObject({ meets: 'board', position: 1800 });
    expect(pieces[1].ends[0].joist).toBeUndefined();
    expect(errorsOf({ ...room, locked }).map(({ code }) => code)).toEqual(['end-off-timber']);
  });

  it('keep their names; pieces that are laid beside them are named so that no two have one name', () => {
    const request = { ...room, room: { outline: rectangle(3600, 1210) }, boards: [board(900), board(2400, { available: 0 })] };
    const { pieces } = placeBoards({ ...request, locked: [{ id: '1.2', outline: block(1226.5, 3595, 5, 1205) }] });
    expect(pieces.map(({ id, length }) => [id, length])).toEqual([
      ['1.1', expect.any(Number)],
      ['1.1a', expect.any(Number)],
      ['1.2', 2370],
    ]);
  });

  it('that hang on one joist are an error', () => {
    const { findings } = placeBoards({
      ...room,
      joists: { direction: 'y', positions: [425, 825, 1225, 1625, 2025, 2425, 2825, 3225, 3575], width: 50 },
      locked: [{ outline: block(5, 423.5, 1100, 2300) }],
    });
    expect(findings.filter(({ severity }) => severity === 'error')).toMatchObject([
      { code: 'piece-on-one-support', value: 1, limit: 2, where: { piece: '2.1' } },
    ]);
  });

  it('are refused over each other, beyond the walls, of unknown stock, larger than any board, or off the rows that are pinned', () => {
    expect(problemsOf([lowRow[0], { outline: block(1600, 3000, 100, 1000) }])).toEqual(['overlap locked[1].outline']);
    expect(problemsOf([{ outline: block(-20, 1000, 5, 1205) }])).toEqual(['outside-room locked[0].outline']);
    expect(problemsOf([{ ...lowRow[0], stock: 'other' }])).toEqual(['board-unknown locked[0].stock']);
    expect(problemsOf([{ outline: block(5, 2823.5, 5, 1205) }])).toEqual(['board-overcut locked[0].board']);
    expect(problemsOf(lowRow, { rowWidths: [590, 1200, 1200] })).toEqual(['rows-do-not-fit rowWidths']);
  });
});

describe('what is at hand', () => {
  const wanted: PlacementRequest = {
    room: { outline: rectangle(2390, 2380) },
    joists: { direction: 'y', first: 45, spacing: 400, last: 2345, width: 50 },
    boards: [board(2400, { price: 10 })],
  };

  it('is used before a board is bought', () => {
    expect(placeBoards(wanted)).toMatchObject({ boardsBought: 2, cost: 20 });
    const boards = [board(2400, { price: 10 }), board(2390, { id: 'strip', width: 1180, atHand: true, price: 0 })];
    const layout = placeBoards({ ...wanted, boards });
    expect(layout).toMatchObject({
      boardsBought: 1,
      cost: 10,
      boardsByStock: [{ stock: '2400', count: 1 }],
      reasons: ['One piece of board at hand is used.', '1 to be bought.', expect.any(String)],
    });
    expect(layout.boards.map(({ stock }) => stock)).toContain('strip');
    expect(errorsOf({ ...wanted, boards }, layout)).toEqual([]);
  });

  it('is there once, unless it is said how often', () => {
    const strip = board(2390, { id: 'strip', width: 1195, atHand: true });
    const used = (stock: BoardStock) =>
      placeBoards({ ...wanted, boards: [board(2400), stock] }).boards.filter(({ stock: id }) => id === 'strip').length;
    expect(used(strip)).toBe(1);
    expect(used({ ...strip, available: 2 })).toBe(2);
  });

  it('may be all that is needed', () => {
    const boards = [board(2400), board(2390, { id: 'strip', width: 1195, atHand: true, available: 2 })];
    expect(placeBoards({ ...wanted, boards })).toMatchObject({ boardsBought: 0, bound: 0, proven: true, boardsByStock: [] });
  });

  it('is refused by the verifier when it is used more often than it is there', () => {
    const boards = [board(2400), board(2390, { id: 'strip', width: 1195, atHand: true, available: 2 })];
    const layout = placeBoards({ ...wanted, boards });
    const once = [boards[0], { ...boards[1], available: undefined }];
    const found = checkLayout({ room: wanted.room, joists: wanted.joists, boards: once, layout });
    expect(found.filter(({ severity }) => severity === 'error')).toMatchObject([{ code: 'stock-exceeded', value: 2, limit: 1 }]);
  });
});

it('a size that has run out is named with how many more would do', () => {
  const attempt = tryPlaceBoards({ ...room, boards: [board(2400, { available: 3 })] });
  if (attempt.ok || attempt.reason !== 'infeasible') throw new Error('three boards do');
  expect(attempt.relaxations[0]).toEqual({ kind: 'board', key: '2400.available', value: 4, message: '4 of 2400' });
});
