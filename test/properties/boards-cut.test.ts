import fc from 'fast-check';
import { expect, it } from 'vitest';
import { areaOf, packKinds } from '../../src/boards/packKinds.js';
import type { PieceKind } from '../../src/boards/pieceKinds.js';
import type { Stock } from '../../src/boards/stocksOf.js';

const SEED = 20261126;
const [LENGTH, WIDTH] = [30, 12];

const stockOf = (kerf: number): Stock => {
  const board = { id: 'b', length: LENGTH, width: WIDTH, thickness: 12.5, massPerArea: 8.4, edge: 'square' as const, kerf };
  return { board, length: LENGTH, width: WIDTH, kerf } as unknown as Stock;
};

/** Pieces in the order that is asked for; those beside which the narrowest of them does not go lie alone. */
function kindsOf(sizes: readonly (readonly [size: number, width: number])[], kerf: number): PieceKind[] {
  const narrowest = Math.min(...sizes.map(([, width]) => width));
  return [...new Map(sizes.map((each) => [each.join(' '), each])).values()]
    .sort(([a, v], [b, w]) => w - v || b - a)
    .map(([size, width]) => ({ width, size, sizes: [size], alone: [width + kerf + narrowest > WIDTH] }));
}

/** Pieces on a board: those that lie alone one after another, the others in lanes side by side; length and width with one cut. */
interface OnBoard {
  readonly alone: number;
  readonly lanes: readonly { readonly length: number; readonly width: number }[];
}

const fits = ({ alone, lanes }: OnBoard, kerf: number): boolean =>
  alone + Math.max(0, ...lanes.map(({ length }) => length)) <= LENGTH + kerf &&
  lanes.reduce((sum, { width }) => sum + width + kerf, 0) <= WIDTH + kerf;

/** A board with one more piece, in every place that there is for it. */
function withPiece({ alone, lanes }: OnBoard, piece: PieceKind): OnBoard[] {
  if (piece.alone[0]) return [{ alone: alone + piece.size, lanes }];
  return [...lanes, { length: 0, width: 0 }].map((lane, at) => {
    const longer = { length: lane.length + piece.size, width: Math.max(lane.width, piece.width) };
    return { alone, lanes: [...lanes.slice(0, at), longer, ...lanes.slice(at + 1)] };
  });
}

/** Whether all pieces go onto these boards and so many more, by trying every place for every one of them. */
function canBeCut([piece, ...others]: readonly PieceKind[], boards: readonly OnBoard[], more: number, kerf: number): boolean {
  if (piece === undefined) return true;
  const open = more > 0 ? [...boards, { alone: 0, lanes: [] }] : boards;
  return open.some((board, at) =>
    withPiece(board, piece)
      .filter((after) => fits(after, kerf))
      .some((after) =>
        canBeCut(others, [...open.slice(0, at), after, ...boards.slice(at + 1)], more - (at === boards.length ? 1 : 0), kerf),
      ),
  );
}

const jobs = fc.record({
  kerf: fc.integer({ min: 0, max: 2 }),
  sizes: fc.array(fc.tuple(fc.integer({ min: 5, max: 30 }), fc.integer({ min: 2, max: 12 })), { minLength: 2, maxLength: 5 }),
  counts: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 5, maxLength: 5 }),
});

it('pieces are cut from so many boards exactly where trying every place finds a way', () => {
  const seen = { cut: 0, not: 0 };
  fc.assert(
    fc.property(jobs, ({ kerf, sizes, counts }) => {
      const stocks = [stockOf(kerf)];
      const kinds = kindsOf(sizes, kerf);
      const wanted = kinds.flatMap((kind, at) => Array.from({ length: counts[at] as number }, () => kind));
      if (wanted.length > 8) return;
      for (const most of [1, 2, 3]) {
        const limits = { caps: [{ of: [1], most }], available: [Infinity] };
        const packed = packKinds(
          stocks,
          kinds,
          Int32Array.from(kinds, (_, at) => counts[at] as number),
          limits,
          [areaOf({ stocks }, kinds)],
          {
            left: 100_000,
          },
        );
        const isCut = canBeCut(wanted, [], most, kerf);
        seen[isCut ? 'cut' : 'not']++;
        expect(typeof packed === 'string' ? packed : 'cut').toBe(isCut ? 'cut' : 'none');
      }
    }),
    { seed: SEED, numRuns: 400 },
  );
  expect(Math.min(seen.cut, seen.not)).toBeGreaterThan(100);
});
