import {
  type BoardLayout,
  checkLayout,
  type PlacementRequest,
  type Point,
  placeBoards,
  planCeiling,
  type Room,
  replanCeiling,
} from 'soffitwright';
import { describe, expect, it } from 'vitest';

const ring = (...numbers: readonly number[]): Point[] =>
  Array.from({ length: numbers.length / 2 }, (_, i) => ({ x: numbers[2 * i], y: numbers[2 * i + 1] }));

const ROOMS: readonly (readonly [name: string, room: Room])[] = [
  ['an L', { outline: ring(0, 0, 4800, 0, 4800, 2400, 3300, 2400, 3300, 3600, 0, 3600) }],
  ['a chimney breast', { outline: ring(0, 0, 1500, 0, 1500, 400, 2900, 400, 2900, 0, 4400, 0, 4400, 3200, 0, 3200) }],
  [
    'a flue',
    {
      outline: ring(0, 0, 4400, 0, 4400, 3200, 0, 3200),
      openings: [{ kind: 'flue', outline: ring(1800, 1000, 2300, 1000, 2300, 1600, 1800, 1600) }],
    },
  ],
  ['a wall askew', { outline: ring(0, 0, 4400, 0, 4300, 3200, 0, 3200) }],
];

const requestOf = (room: Room): PlacementRequest => ({
  room,
  joists: { direction: 'y', first: 40, spacing: 400, width: 50 },
  boards: [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
  prefer: 'tradesperson',
});

/** What the outlines alone show to be wrong. */
const errorsOf = ({ room, joists, boards }: PlacementRequest, layout: BoardLayout) =>
  checkLayout({
    room,
    joists,
    boards,
    layout: {
      pieces: layout.pieces.map(({ id, outline, holes, board }) => ({ id, outline, ...(holes && { holes }), board })),
      boards: layout.boards.map(({ id, stock }) => ({ id, stock })),
    },
  }).filter(({ severity }) => severity === 'error');

describe.each(ROOMS)('pieces that are up in a room with %s', (_, room) => {
  const request = requestOf(room);
  const whole = placeBoards(request);

  it.each([
    [2, 0],
    [2, 1],
    [3, 0],
    [3, 1],
    [3, 2],
  ])('every %ith from %i on: the rest is laid round them', (every, from) => {
    const locked = whole.pieces
      .filter((__, i) => i % every === from)
      .map(({ outline, holes }) => ({ outline, ...(holes && { holes }) }));
    const layout = placeBoards({ ...request, locked });
    expect(layout.pieces.filter((piece) => piece.locked).map(({ outline }) => outline)).toEqual(
      locked.map(({ outline }) => outline),
    );
    expect(errorsOf(request, layout)).toEqual([]);
    expect(layout.boardsBought).toBe(layout.boards.filter(({ opened }) => opened !== true).length);
  });

  it('the plan stays as it is, and a spoiled board moves no piece', () => {
    const { joists, boards } = request;
    const plan = planCeiling({ room, joists, boards, lining: [{ kind: 'plasterboard', thickness: 9.5 }] });
    const fixed = plan.layout.pieces.slice(0, 2).map(({ id }) => id);
    expect(replanCeiling(plan, { fixed }).changed).toEqual([]);
    const last = plan.layout.pieces[plan.layout.pieces.length - 1];
    const { changed, layout } = replanCeiling(plan, { fixed, spoiled: [last.board] });
    expect(changed.filter(({ what }) => what === 'place' || what === 'length')).toEqual([]);
    // The same corners, whichever of them comes first.
    const corners = (outline: readonly { x: number; y: number }[] = []) => outline.map(({ x, y }) => `${x} ${y}`).sort();
    expect(corners(layout.pieces.find(({ id }) => id === last.id)?.outline)).toEqual(corners(last.outline));
  });
});
