import { fc, test } from '@fast-check/vitest';
import { type BoardLayout, checkLayout, type Overrides, tryPlaceBoards } from 'soffitwright';
import { describe, expect } from 'vitest';
import { anyRoomToLay, boardOf, type RoomToLay } from '../generators/rooms.js';

const runs = { seed: 20_261_125, numRuns: 25 };

const lay = (room: RoomToLay): BoardLayout | undefined => {
  const attempt = tryPlaceBoards({ ...room, prefer: 'boards' });
  if (!attempt.ok && attempt.reason === 'input') throw new Error(attempt.problems.map(({ message }) => message).join('; '));
  return attempt.ok ? attempt.value : undefined;
};

const boardsOf = (layout: BoardLayout | undefined): number => layout?.boardsBought ?? Infinity;

/** The room with some rules changed. */
const under = (room: RoomToLay, change: Overrides): RoomToLay => ({ ...room, rules: { ...room.rules, ...change } });

const smaller = (room: RoomToLay, key: 'stagger.minimum' | 'piece.minimumLength', share: number): RoomToLay =>
  under(room, { [key]: Math.floor((room.rules[key] as number) * share) });

/** What is easier to lay never takes more boards, nor has a bound above the boards of what is harder. */
function broken(easier: RoomToLay, harder: RoomToLay): string[] {
  const [less, more] = [lay(easier), lay(harder)];
  const told = `${boardsOf(less)} boards, bound ${less?.bound}, instead of ${boardsOf(more)}`;
  if (more === undefined) return [];
  if (less === undefined) return ['no layout'];
  return less.bound > more.boardsBought || (less.proven && less.boardsBought > more.boardsBought) ? [told] : [];
}

describe('a room laid with the fewest boards', { timeout: 300_000 }, () => {
  test.prop([anyRoomToLay], runs)('passes the check of layouts, with no fewer boards than the bound', (room) => {
    const layout = lay(room);
    if (layout === undefined) return;
    expect(checkLayout({ ...room, layout }).filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(layout.bound).toBeLessThanOrEqual(layout.boardsBought);
    expect(layout.proven).toBe(layout.bound === layout.boardsBought);
    expect(layout.boardsBought).toBe(layout.boards.length);
  });

  test.prop([anyRoomToLay, fc.constantFrom(1800, 2400, 2700, 3000, 3600)], runs)(
    'takes no more boards when another length can be had',
    (room, length) => {
      const [board] = room.boards;
      if (board.length === length) return;
      expect(broken({ ...room, boards: [board, { ...boardOf(length, board.width, board.kerf), id: 'another' }] }, room)).toEqual(
        [],
      );
    },
  );

  test.prop([anyRoomToLay, fc.integer({ min: 1, max: 5 })], runs)('takes no more boards when a cut takes less', (room, more) => {
    const [board] = room.boards;
    expect(broken(room, { ...room, boards: [{ ...board, kerf: (board.kerf ?? 0) + more }] })).toEqual([]);
  });

  test.prop([anyRoomToLay, fc.integer({ min: 0, max: 9 })], runs)(
    'takes no more boards with a smaller stagger',
    (room, tenth) => {
      expect(broken(smaller(room, 'stagger.minimum', tenth / 10), room)).toEqual([]);
    },
  );

  test.prop([anyRoomToLay, fc.integer({ min: 1, max: 9 })], runs)(
    'takes no more boards with a smaller least piece',
    (room, tenth) => {
      expect(broken(smaller(room, 'piece.minimumLength', tenth / 10), room)).toEqual([]);
    },
  );

  test.prop([anyRoomToLay], runs)('takes no more boards where a piece may lie on one support', (room) => {
    expect(broken(under(room, { 'piece.minimumSupports': 1 }), under(room, { 'piece.minimumSupports': 2 }))).toEqual([]);
  });

  test.prop([anyRoomToLay], runs)('takes as many boards with its rows pinned, and its bound then is no lower', (room) => {
    const free = lay(room);
    if (free === undefined) return;
    const attempt = tryPlaceBoards({ ...room, prefer: 'boards', rowWidths: free.rows.map(({ width }) => width) });
    if (!attempt.ok) throw new Error('no layout with the rows of the answer');
    expect(attempt.value.bound).toBeGreaterThanOrEqual(free.bound);
    if (free.proven) expect(attempt.value.boardsBought).toBeGreaterThanOrEqual(free.boardsBought);
    if (attempt.value.proven) expect(attempt.value.boardsBought).toBeLessThanOrEqual(free.boardsBought);
  });

  test.prop([anyRoomToLay], runs)('takes no fewer boards when they come short', (room) => {
    const layout = lay(room);
    if (layout?.proven !== true || layout.boardsAtMinimumLength === null) return;
    expect(layout.boardsAtMinimumLength).toBeGreaterThanOrEqual(layout.boardsBought);
  });
});
