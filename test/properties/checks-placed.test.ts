import { fc, test } from '@fast-check/vitest';
import {
  type BoardLayout,
  checkFixings,
  checkLayout,
  type Finding,
  type LayoutCheck,
  type PieceToCheck,
  placeFixings,
} from 'soffitwright';
import { beforeAll, describe, expect, it } from 'vitest';
import { anyPlacedRoom, type PlacedRoom } from '../generators/placedRooms.js';

const SEED = 20_261_125;
const runs = (numRuns: number) => ({ seed: SEED, numRuns });

/** Placed once, since placing takes longer than all that is done with it here. */
let rooms: readonly PlacedRoom[] = [];

beforeAll(() => {
  rooms = fc.sample(anyPlacedRoom, runs(40)).filter((room) => room !== undefined);
}, 120_000);

const errorsOf = (check: LayoutCheck): Finding[] => checkLayout(check).filter(({ severity }) => severity === 'error');

const bareOf = ({ pieces, boards }: BoardLayout): LayoutCheck['layout'] => ({
  pieces: pieces.map(({ id, outline, holes, board }) => ({ id, outline, board, ...(holes && { holes }) })),
  boards: boards.map(({ id, stock }) => ({ id, stock })),
});

type Hurt = (piece: PieceToCheck) => readonly PieceToCheck[];

const moved =
  (dx: number, dy: number): Hurt =>
  (piece) => [
    {
      ...piece,
      outline: piece.outline.map(({ x, y }) => ({ x: x + dx, y: y + dy })),
      ...(piece.holes && { holes: piece.holes.map((hole) => hole.map(({ x, y }) => ({ x: x + dx, y: y + dy }))) }),
    },
  ];

/** Whatever is done to a piece here leaves a part bare, covers one twice, or goes through a wall. */
const HURTS: Readonly<Record<string, Hurt>> = {
  'left out': () => [],
  'laid twice': (piece) => [piece, { ...piece, id: `${piece.id} again` }],
  'moved 16 to the right': moved(16, 0),
  'moved 16 to the left': moved(-16, 0),
  'moved 16 up': moved(0, 16),
  'moved 16 down': moved(0, -16),
  'drawn 20 larger': (piece) => {
    const least = Math.min(...piece.outline.map(({ x }) => x));
    return [{ ...piece, outline: piece.outline.map((point) => (point.x === least ? { ...point, x: point.x - 20 } : point)) }];
  },
  'drawn 20 smaller': (piece) => {
    const least = Math.min(...piece.outline.map(({ y }) => y));
    return [{ ...piece, outline: piece.outline.map((point) => (point.y === least ? { ...point, y: point.y + 20 } : point)) }];
  },
};

describe('layouts that were placed', () => {
  it('are enough to say something', () => {
    expect(rooms.length).toBeGreaterThan(25);
    expect(rooms.filter(({ check }) => (check.room.openings ?? []).length > 0).length).toBeGreaterThan(5);
  });

  it('have no error when nothing but their outlines is known', () => {
    for (const { check } of rooms) expect(errorsOf({ ...check, layout: bareOf(check.layout) })).toEqual([]);
  });

  it('have no error with all that they say of themselves', () => {
    for (const { check } of rooms) expect(errorsOf(check)).toEqual([]);
  });

  test.prop([fc.nat(), fc.nat(), fc.constantFrom(...Object.keys(HURTS))], runs(150))(
    'have one once a piece is hurt',
    (room, pick, name) => {
      const { check } = rooms[room % rooms.length];
      const bare = bareOf(check.layout);
      const layout = {
        ...bare,
        pieces: bare.pieces.flatMap((piece, i) => (i === pick % bare.pieces.length ? HURTS[name](piece) : [piece])),
      };
      const codes = errorsOf({ ...check, layout }).map(({ code }) => code);
      expect(codes.some((code) => ['cover-gap', 'overlap', 'outside-room', 'over-opening'].includes(code))).toBe(true);
    },
  );

  it('have screws without an error', () => {
    for (const {
      check: { room, layout, joists },
    } of rooms) {
      const fixings = placeFixings({ room, layout, joists });
      expect(checkFixings({ room, layout, joists, fixings }).filter(({ severity }) => severity === 'error')).toEqual([]);
    }
  });

  test.prop([fc.nat(), fc.nat()], runs(60))('have an error once a line of screws is left out', (pick, number) => {
    const { room, layout, joists } = rooms[pick % rooms.length].check;
    const { positions, lines } = placeFixings({ room, layout, joists });
    const line = lines[number % lines.length];
    const fixings = positions.filter(({ piece, joist }) => piece !== line.piece || joist !== line.joist);
    const found = checkFixings({ room, layout, joists, fixings }).filter(
      ({ code, severity }) => code === 'fixing-gap' && severity === 'error',
    );
    expect(found.map(({ where }) => [where?.piece, where?.joist])).toContainEqual([line.piece, line.joist]);
  });

  test.prop([fc.nat(), fc.nat(), fc.integer({ min: 60, max: 150 }), fc.boolean()], runs(60))(
    'have an error once a screw misses its joist',
    (pick, number, by, back) => {
      const { room, layout, joists } = rooms[pick % rooms.length].check;
      const { positions } = placeFixings({ room, layout, joists });
      const hit = positions[number % positions.length];
      const along = joists[0].start.x === joists[0].end.x ? { x: hit.x + (back ? -by : by) } : { y: hit.y + (back ? -by : by) };
      const fixings = positions.map((position) => (position === hit ? { ...position, ...along } : position));
      const found = checkFixings({ room, layout, joists, fixings }).filter(({ severity }) => severity === 'error');
      expect(found.map(({ code }) => code)).toContain('fixing-off-timber');
    },
  );
});
