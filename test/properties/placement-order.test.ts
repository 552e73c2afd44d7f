import { fc, test } from '@fast-check/vitest';
import { type BoardLayout, type Point, type Preference, tryPlaceBoards } from 'soffitwright';
import { describe, expect } from 'vitest';
import { anyRoomToLay, boardOf, type RoomToLay } from '../generators/rooms.js';

const runs = { seed: 20_261_125, numRuns: 25 };

const lay = (room: RoomToLay, prefer: Preference = 'boards'): BoardLayout | undefined => {
  const attempt = tryPlaceBoards({ ...room, prefer });
  return attempt.ok ? attempt.value : undefined;
};

/** What a layout is worth, whichever way it lies. */
const worth = (layout: BoardLayout | undefined) =>
  layout && {
    boards: layout.boardsBought,
    bound: layout.bound,
    endJoints: layout.endJoints,
    cuts: layout.cuts,
    wasteAreaM2: layout.wasteAreaM2,
    atMinimumLength: layout.boardsAtMinimumLength,
  };

/** A layout whose findings name walls by their corners, in an order that does not go by the numbers of the walls. */
const byPlace = (layout: BoardLayout | undefined, outline: readonly Point[]) =>
  layout && {
    ...layout,
    findings: layout.findings
      .map(({ where, ...finding }) => {
        const { wall, ...place } = where ?? {};
        if (wall === undefined) return JSON.stringify({ ...finding, place });
        const corners = [outline[wall], outline[(wall + 1) % outline.length]].sort((a, b) => a.x - b.x || a.y - b.y);
        return JSON.stringify({ ...finding, place: { ...place, corners } });
      })
      .sort(),
  };

describe('the order of what is given', { timeout: 300_000 }, () => {
  test.prop([anyRoomToLay, fc.integer({ min: 0, max: 3 })], runs)(
    'of corners, joists and boards changes nothing, to the last digit',
    (room, turn) => {
      const boards = [...room.boards, { ...boardOf(2100, room.boards[0].width, room.boards[0].kerf), id: 'another' }];
      const corners = [...room.room.outline.slice(turn), ...room.room.outline.slice(0, turn)];
      const other = {
        ...room,
        room: { outline: corners.reverse() },
        joists: { ...room.joists, positions: [...room.joists.positions].reverse() },
        boards: [...boards].reverse(),
      };
      expect(byPlace(lay(other), other.room.outline)).toEqual(byPlace(lay({ ...room, boards }), room.room.outline));
    },
  );

  test.prop([anyRoomToLay], runs)('of keys and of calls changes nothing', (room) => {
    const first = lay(room);
    const again = JSON.parse(JSON.stringify({ ...room, rules: Object.fromEntries(Object.entries(room.rules).reverse()) }));
    expect(lay(again)).toEqual(first);
    if (first !== undefined) expect(JSON.parse(JSON.stringify(first))).toEqual(first);
  });

  test.prop([anyRoomToLay], runs)('of the ends of the room does not change what it takes', (room) => {
    const far = Math.max(...room.room.outline.map(({ x, y }) => (room.joists.direction === 'y' ? x : y)));
    // Tenths of a mm, so that the mirrored joists stand exactly where they should.
    const positions = room.joists.positions.map((at) => Math.round((far - at) * 10) / 10);
    expect(worth(lay({ ...room, joists: { ...room.joists, positions } }))).toEqual(worth(lay(room)));
  });
});

describe('what is preferred', { timeout: 300_000 }, () => {
  test.prop([anyRoomToLay], runs)('comes first: boards before butt joints, or butt joints before boards', (room) => {
    const [boards, joints] = [lay(room, 'boards'), lay(room, 'joints')];
    expect(joints === undefined).toBe(boards === undefined);
    if (boards === undefined || joints === undefined) return;
    if (boards.proven) expect(boards.boardsBought).toBeLessThanOrEqual(joints.boardsBought);
    if (joints.boardsBought === boards.boardsBought && boards.piecesProven) {
      expect(boards.endJoints).toBeLessThanOrEqual(joints.endJoints);
    }
    expect(joints.endJoints).toBeLessThanOrEqual(boards.endJoints);
  });

  test.prop([anyRoomToLay, fc.integer({ min: 1, max: 9 })], runs)(
    'is money where it comes first, and equal prices are boards',
    (room, price) => {
      const boards = room.boards.map((board) => ({ ...board, price }));
      const [cheapest, fewest] = [lay({ ...room, boards }, 'cost'), lay({ ...room, boards }, 'boards')];
      expect(cheapest?.cost).toBe(cheapest === undefined ? undefined : price * cheapest.boardsBought);
      if (cheapest?.proven) expect(cheapest.boardsBought).toBeLessThanOrEqual(fewest?.boardsBought as number);
    },
  );
});
