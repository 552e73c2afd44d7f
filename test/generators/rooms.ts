import fc from 'fast-check';
import { type BoardStock, type Direction, type Overrides, type Point, rectangle } from 'soffitwright';

/** A rectangular room to lay boards in, with the rules for it. */
export interface RoomToLay {
  readonly room: { readonly outline: readonly Point[] };
  readonly joists: { readonly direction: Direction; readonly positions: readonly number[]; readonly width: number };
  readonly boards: readonly BoardStock[];
  readonly rules: Overrides;
}

/** Length and width of the boards in the shops, mm; the last three are the inch sizes. */
const SIZES = [
  [1800, 900],
  [2400, 900],
  [2400, 1200],
  [2700, 1200],
  [3000, 1200],
  [3600, 1200],
] as const;
const INCH_SIZES = [
  [2438.4, 1219.2],
  [3048, 1219.2],
  [3657.6, 1219.2],
] as const;

export const boardOf = (length: number, width: number, kerf = 0): BoardStock => ({
  id: `${width} x ${length}`,
  length,
  width,
  thickness: 12.5,
  massPerArea: 8.4,
  edge: 'square',
  kerf,
});

/** Draws whole numbers, the same for the same seed in every engine: additions, shifts and exact products of 32 bits. */
export class Draw {
  private state: number;

  constructor(seed: number) {
    this.state = Math.imul(seed + 1, 0x9e3779b1) | 0;
  }

  /** A whole number from `least` to `greatest`, both included. */
  between(least: number, greatest: number): number {
    this.state = (this.state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(this.state ^ (this.state >>> 15), 1 | this.state);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed);
    return least + (((mixed ^ (mixed >>> 14)) >>> 0) % (greatest - least + 1));
  }

  from<T>(choices: readonly T[]): T {
    return choices[this.between(0, choices.length - 1)];
  }
}

/** Tenths of a mm as mm, to the nearest double. */
const tenths = (count: number): number => count / 10;

/** Joist centres in tenths of a mm: even, or each a little off, or one missing; in some rooms a last one beside the far wall. */
function centres(draw: Draw, across: number, spacing: number, grain: number): number[] {
  const first = draw.between(25, Math.floor(spacing / 10)) * 10;
  const stray = draw.from([0, 0, 0, 5, 10]) * (10 / grain);
  const missing = draw.from([-1, -1, -1, -1, draw.between(1, 10)]);
  const found: number[] = [];
  for (let k = 0; first + k * spacing < across - 200; k++) {
    const off = draw.between(-stray, stray) * grain;
    if (k !== missing) found.push(first + k * spacing + off);
  }
  const last = across - 450;
  if (draw.between(0, 1) === 1 && (found.length === 0 || last - found[found.length - 1] > 1500)) found.push(last);
  return found;
}

/**
 * One room for each seed: 2 to 9 m by 1 to 8 m, joists at all usual centres, regular and irregular, all board sizes, kerf 0 to
 * 5, stagger from one bay to 1200, least piece 200 to 600; whole millimetres, or tenths where the sizes are in inches. `greatest`
 * makes them smaller: across and along the joists, mm.
 */
export function roomToLay(seed: number, greatest: readonly [number, number] = [9000, 8000]): RoomToLay {
  const draw = new Draw(seed);
  const inches = draw.between(1, 5) === 1;
  const grain = inches ? 1 : 10;
  const [acrossMost, alongMost] = greatest.map((most) => (most * 10) / grain);
  const [across, along] = [draw.between(20_000 / grain, acrossMost), draw.between(10_000 / grain, alongMost)];
  const spacing = inches ? draw.from([4064, 6096]) : draw.from([300, 350, 400, 400, 450, 600]) * 10;
  const direction = draw.from(['x', 'y'] as const);
  const width = draw.from([38, 44, 47, 50, 63]);
  const [boardLength, boardWidth] = inches ? draw.from(INCH_SIZES) : draw.from(SIZES);
  const kerf = draw.from([0, 0, 0, 1, 2, 3, 3, 4, 5]);
  const positions = centres(draw, across * grain, spacing, grain).map(tenths);
  // Most rooms ask for one bay, and a joist that strays may make its bay 20 mm less; the others for up to 1200.
  const bay = tenths(spacing) - 20;
  const stagger = draw.between(1, 10) <= 6 ? bay : draw.between(Math.ceil(bay), 1200);
  const gaps = draw.from([[0, 0], [3, 3], [5, 3], null, null]);
  const size = [tenths(across * grain), tenths(along * grain)] as const;
  return {
    room: { outline: direction === 'y' ? rectangle(size[0], size[1]) : rectangle(size[1], size[0]) },
    joists: { direction, positions, width },
    boards: [boardOf(boardLength, boardWidth, kerf)],
    rules: {
      'stagger.minimum': stagger,
      'piece.minimumLength': draw.from([200, 300, 300, 400, 500, 600]),
      'piece.minimumSupports': draw.from([1, 2, 2]),
      'row.minimumWidth': draw.from([0, 100, 200, 200]),
      ...(gaps !== null && { 'perimeter.gap': gaps[0], 'joint.gap': gaps[1] }),
    },
  };
}

/** One of {@link roomToLay} of 2 to 4 m by 1 to 3 m, many of which are laid in little time. */
export const anyRoomToLay: fc.Arbitrary<RoomToLay> = fc
  .integer({ min: 0, max: 999_999 })
  .map((seed) => roomToLay(seed, [4000, 3000]));

/** The same rooms at every run. */
export const roomsToLay = (count: number, first = 0): RoomToLay[] =>
  Array.from({ length: count }, (_, k) => roomToLay(first + k));
