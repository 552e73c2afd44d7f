import { type BoardLayout, checkBound, checkLayout, type PlacementRequest, tryPlaceBoards } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { type BoundedRoom, boundedRoom, drawnRows } from '../generators/boundedRooms.js';
import { Draw } from '../generators/rooms.js';

/** Rooms that are tried; DEVELOPERS.md says how to try more. */
const ROOMS = Number(process.env.BOUNDED_ROOMS ?? 20);
/** Divisions into rows that are tried in each of them. */
const TRIED = 4;

const laid = (request: PlacementRequest): BoardLayout | undefined => {
  const attempt = tryPlaceBoards(request);
  return attempt.ok ? attempt.value : undefined;
};

const isValid = ({ room, joists, boards }: PlacementRequest, layout: BoardLayout): boolean =>
  checkLayout({ room, joists, boards, layout }).every(({ severity }) => severity !== 'error');

/** Drawn rows on which a room takes fewer boards than its bound. */
function below({ request, ...room }: BoundedRoom, bound: number, draw: Draw): string[] {
  return Array.from({ length: TRIED }).flatMap(() => {
    const rowWidths = drawnRows({ request, ...room }, draw);
    const layout = rowWidths && laid({ ...request, rowWidths });
    if (layout === undefined || layout.boardsBought >= bound || !isValid(request, layout)) return [];
    return [`${room.name}: ${layout.boardsBought} on rows of ${rowWidths?.join(', ')}, and the bound is ${bound}`];
  });
}

describe(`bounds of ${ROOMS} rooms that are no plain rectangles`, { timeout: 60_000 + 5_000 * ROOMS }, () => {
  const rooms = Array.from({ length: ROOMS }, (_, seed) => boundedRoom(seed)).flatMap((room) => {
    const layout = laid(room.request);
    return layout === undefined ? [] : [{ room, layout }];
  });

  it('are below what any drawn rows take', () => {
    expect(rooms.length).toBeGreaterThan(ROOMS / 2);
    expect(rooms.flatMap(({ room, layout }, seed) => below(room, layout.bound, new Draw(seed)))).toEqual([]);
  });

  it('are proven in four of five of them, and their certificates hold for no more', () => {
    const proven = rooms.filter(({ layout }) => layout.proven);
    expect(proven.length).toBeGreaterThan(0.8 * rooms.length);
    for (const { room, layout } of proven) {
      const { certificate, boardsBought } = layout;
      if (certificate === undefined) throw new Error(`${room.name} has no certificate`);
      expect(checkBound({ request: room.request, certificate, bound: boardsBought }), room.name).toBe(true);
      expect(checkBound({ request: room.request, certificate, bound: boardsBought + 1 }), room.name).toBe(false);
    }
  });

  it('are not lifted by a light above what the room takes without it', () => {
    for (const { room, layout } of rooms) {
      const { openings, ...plain } = room.request.room;
      if (openings === undefined) continue;
      const without = laid({ ...room.request, room: plain });
      if (without !== undefined) expect(layout.bound, room.name).toBeLessThanOrEqual(without.boardsBought);
    }
  });
});
