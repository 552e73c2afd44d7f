import fc from 'fast-check';
import { type BoardStock, joistsFromPositions, type PieceToCheck, type Point } from 'soffitwright';
import { type CutJoint, cutRows } from './cutRows.js';
import type { CheckByHand } from './layoutsByHand.js';

const BOARD: BoardStock = { id: 'b', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' };

const points = (...places: readonly (readonly [number, number])[]): Point[] => places.map(([x, y]) => ({ x, y }));

/** Rooms as they are found in houses: w x d, with a part of a x b taken away or added. */
const SHAPES: Readonly<Record<string, (w: number, d: number, a: number, b: number) => Point[]>> = {
  'an L': (w, d, a, b) => points([0, 0], [w, 0], [w, d - b], [w - a, d - b], [w - a, d], [0, d]),
  'a T': (w, d, a, b) => points([0, 0], [w, 0], [w, d - b], [w - a, d - b], [w - a, d], [a, d], [a, d - b], [0, d - b]),
  'a breast': (w, d, a) => points([0, 0], [w, 0], [w, d], [w - a, d], [w - a, d - 400], [a, d - 400], [a, d], [0, d]),
  'a bay': (w, d, a, b) => points([0, 0], [w, 0], [w, d - b], [w - a, d - b], [w - a - b, d], [a + b, d], [a, d - b], [0, d - b]),
  'a breast on each side': (w, d, a) =>
    points(
      [0, 0],
      [a, 0],
      [a, 350],
      [w - a, 350],
      [w - a, 0],
      [w, 0],
      [w, d],
      [w - a, d],
      [w - a, d - 350],
      [a, d - 350],
      [a, d],
      [0, d],
    ),
  'a room out of square': (w, d, a, b) => points([0, 0], [w, a / 40], [w - b / 20, d], [b / 30, d + a / 60]),
};

/** A room cut into good rows; nothing where the lines chosen leave pieces or rows that are too small. */
export interface ShapedRoom {
  readonly name: string;
  readonly check: CheckByHand;
  readonly turn: number;
}

export const anyShapedRoom = (turns: number): fc.Arbitrary<ShapedRoom> =>
  fc
    .record({
      name: fc.constantFrom(...Object.keys(SHAPES)),
      w: fc.integer({ min: 3000, max: 5600 }),
      d: fc.integer({ min: 2600, max: 4600 }),
      a: fc.integer({ min: 700, max: 1200 }),
      b: fc.integer({ min: 500, max: 1100 }),
      spacing: fc.constantFrom(400, 450),
      first: fc.integer({ min: 60, max: 340 }),
      starts: fc.tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 5 })).filter(([even, odd]) => even !== odd),
      turn: fc.integer({ min: 0, max: turns - 1 }),
    })
    .filter(({ w, a, b }) => w > 2 * (a + b) + 300)
    .map(({ name, w, d, a, b, spacing, first, starts, turn }) => {
      const outline = SHAPES[name](w, d, a, b);
      const positions = Array.from({ length: 20 }, (_, k) => first + k * spacing).filter((at) => at < w - 60);
      const top = Math.max(...outline.map(({ y }) => y)) - 5;
      const levels = levelsTo(top);
      const joints = levels.slice(1).flatMap((_, i): CutJoint[] => {
        const every = positions.filter((_, k) => k >= starts[i % 2] && (k - starts[i % 2]) % 5 === 0);
        return every.map((at) => ({ row: i + 1, foot: at, head: at }));
      });
      const pieces = cutRows({ outline, levels, joints, gap: 5, jointGap: 3 });
      const room = { outline };
      const joists = joistsFromPositions({ room, direction: 'y', positions, width: 50 });
      const layout = { pieces, boards: pieces.map(({ board }) => ({ id: board, stock: 'b' })) };
      return { name, turn, check: { room, joists, boards: [BOARD], layout } };
    })
    .filter(({ check }) => check.layout.pieces.every((piece) => isLarge(piece, check)));

/** Rows of 1200, the last at least 300: else the first is ripped too. */
function levelsTo(top: number): number[] {
  const rest = (top - 5) % 1200;
  const levels = [5];
  if (rest < 300) levels.push(605);
  while (levels[levels.length - 1] + 1200 < top) levels.push(levels[levels.length - 1] + 1200);
  return [...levels, top];
}

/** Long enough for two joists, wide enough for a row, and no longer than the board. */
function isLarge({ outline }: PieceToCheck, { joists }: CheckByHand): boolean {
  const [xs, ys] = [outline.map(({ x }) => x), outline.map(({ y }) => y)];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const under = joists.filter(
    ({ start, end }) => start.x > left - 3 && start.x < right + 3 && Math.min(end.y, high) - Math.max(start.y, low) > 260,
  );
  return right - left > 400 && right - left <= 2400 && high - low > 300 && under.length >= 2;
}
