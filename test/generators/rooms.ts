import fc from 'fast-check';
import { type BoardStock, type Direction, type Overrides, type Point, rectangle } from 'soffitwright';

/** A rectangular room to lay boards in, with the rules for it. */
export interface RoomToLay {
  readonly room: { readonly outline: readonly Point[] };
  readonly joists: { readonly direction: Direction; readonly positions: readonly number[]; readonly width: number };
  readonly boards: readonly BoardStock[];
  readonly rules: Overrides;
}

const SIZES = [
  [1800, 900],
  [2400, 900],
  [2400, 1200],
  [2700, 1200],
  [3000, 1200],
] as const;

export const board = (length: number, width: number, kerf = 0): BoardStock => ({
  id: `${width} x ${length}`,
  length,
  width,
  thickness: 12.5,
  massPerArea: 8.4,
  edge: 'square',
  ...(kerf > 0 && { kerf }),
});

/** Joist centres across a room: even, or each a little off, or with one missing; in a few rooms a last one beside the far wall. */
const centres = (across: number, spacing: number) =>
  fc
    .record({
      first: fc.integer({ min: 25, max: spacing }),
      stray: fc.constantFrom(0, 0, 5, 10),
      strays: fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 80, maxLength: 80 }),
      missing: fc.option(fc.integer({ min: 1, max: 10 }), { freq: 5 }),
      last: fc.boolean(),
    })
    .map(({ first, stray, strays, missing, last }) => {
      const found: number[] = [];
      for (let k = 0; first + k * spacing < across - 20; k++) {
        if (missing !== null && k === missing) continue;
        found.push(Math.round(first + k * spacing + (stray * strays[k]) / 1000));
      }
      if (last && across - 45 - found[found.length - 1] > 150) found.push(across - 45);
      return found;
    });

/**
 * Rooms of 2 to 9 m by 1 to 8 m, joists at all usual centres, all board sizes, kerf 0 to 5, stagger from one bay to 1200, least
 * piece 200 to 600.
 */
export const anyRoomToLay: fc.Arbitrary<RoomToLay> = fc
  .record({
    across: fc.integer({ min: 2000, max: 9000 }),
    along: fc.integer({ min: 1000, max: 8000 }),
    spacing: fc.constantFrom(300, 350, 400, 406, 450, 600, 610),
    direction: fc.constantFrom('x' as const, 'y' as const),
    width: fc.constantFrom(38, 44, 47, 50, 63),
    size: fc.constantFrom(...SIZES),
    kerf: fc.constantFrom(0, 0, 3, 5),
    stagger: fc.integer({ min: 0, max: 100 }),
    piece: fc.constantFrom(200, 300, 300, 400, 600),
    supports: fc.constantFrom(1, 2, 2),
    gaps: fc.constantFrom([0, 0], [3, 3], [5, 3]),
    row: fc.constantFrom(0, 100, 200, 200),
  })
  .chain((room) => centres(room.across, room.spacing).map((positions) => ({ ...room, positions })))
  .map(({ across, along, spacing, direction, width, size, kerf, stagger, piece, supports, gaps, row, positions }) => ({
    room: { outline: direction === 'y' ? rectangle(across, along) : rectangle(along, across) },
    joists: { direction, positions, width },
    boards: [board(size[0], size[1], kerf)],
    rules: {
      // Most rooms ask for one bay, a few for more.
      'stagger.minimum': stagger < 60 ? spacing - 20 : Math.round(spacing + ((1200 - spacing) * (stagger - 60)) / 40),
      'piece.minimumLength': piece,
      'piece.minimumSupports': supports,
      'perimeter.gap': gaps[0],
      'joint.gap': gaps[1],
      'row.minimumWidth': row,
    },
  }));

/** The same rooms at every run, large and small alike. */
export const seededRooms = (seed: number, count: number): RoomToLay[] =>
  fc.sample(fc.noBias(anyRoomToLay), { seed, numRuns: count });
