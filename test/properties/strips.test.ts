import fc from 'fast-check';
import { expect, it } from 'vitest';
import { heaviestBeside } from '../../src/boards/heaviestBeside.js';
import { likelyStrips, widestAcross } from '../../src/boards/likelyStrips.js';
import { knownStrips, stripBlocks } from '../../src/boards/stripBlocks.js';

const SEED = 20261126;

interface Board {
  readonly length: number;
  readonly width: number;
  readonly kerf: number;
}

/** A piece by itself: its length with one cut, its width, and what it is worth. */
interface Strip {
  readonly size: number;
  readonly width: number;
  readonly value: number;
}

/** The most that strips are worth which lie side by side within a length, by trying every place for every one of them. */
function mostBeside({ width, kerf }: Board, strips: readonly Strip[], room: number): number {
  const lanes: { length: number; width: number }[] = [];
  const place = (at: number, value: number): number => {
    if (at === strips.length) {
      const across = lanes.reduce((sum, lane) => sum + lane.width + kerf, 0);
      return across <= width + kerf && lanes.every(({ length }) => length <= room) ? value : 0;
    }
    const strip = strips[at] as Strip;
    let most = place(at + 1, value);
    for (let lane = 0; lane <= lanes.length; lane++) {
      const before = lanes[lane];
      lanes[lane] = { length: (before?.length ?? 0) + strip.size, width: Math.max(before?.width ?? 0, strip.width) };
      most = Math.max(most, place(at + 1, value + strip.value));
      if (before === undefined) lanes.length = lane;
      else lanes[lane] = before;
    }
    return most;
  };
  return place(0, 0);
}

/** The same with whole pieces before them, as many of each as go in. */
function mostOfBoard(board: Board, wholes: readonly Strip[], strips: readonly Strip[]): number {
  const cut = (at: number, room: number): number => {
    const whole = wholes[at];
    if (whole === undefined) return mostBeside(board, strips, room);
    let most = 0;
    for (let count = 0; count * whole.size <= room; count++)
      most = Math.max(most, count * whole.value + cut(at + 1, room - count * whole.size));
    return most;
  };
  return cut(0, board.length + board.kerf);
}

const sized = (widest: number) =>
  fc.record({
    size: fc.integer({ min: 5, max: 30 }),
    width: fc.integer({ min: 2, max: widest }),
    value: fc.integer({ min: 0, max: 9 }),
  });

const boards = fc.record({
  board: fc.record({ length: fc.constant(30), width: fc.constant(12), kerf: fc.integer({ min: 0, max: 2 }) }),
  wholes: fc.array(sized(12), { maxLength: 3 }),
  kinds: fc.array(fc.tuple(sized(6), fc.integer({ min: 1, max: 2 })), { maxLength: 3 }),
});

/** The pieces in the order that is asked for, and each by itself. */
function stripsOf(kinds: readonly (readonly [Strip, number])[]) {
  const sorted = [...kinds].sort(([a], [b]) => b.width - a.width || b.size - a.size);
  return {
    pieces: {
      names: sorted.map((_, at) => at),
      widths: sorted.map(([{ width }]) => width),
      sizes: sorted.map(([{ size }]) => size),
      counts: sorted.map(([, count]) => count),
    },
    worthOf: (at: number): number => sorted[at]?.[0].value ?? 0,
    each: sorted.flatMap(([strip, count]) => Array.from({ length: count }, () => strip)),
  };
}

const wholesOf = (wholes: readonly Strip[]) => ({
  widths: wholes.map(({ width }) => width),
  alone: wholes.map(() => true),
  sizes: wholes.map(({ size }) => size),
  values: Float64Array.from(wholes, ({ value }) => value),
});

it('a board with strips that are known one by one is worth what trying every place finds', () => {
  let beside = 0;
  fc.assert(
    fc.property(boards, ({ board, wholes, kinds }) => {
      const { pieces, worthOf, each } = stripsOf(kinds);
      const { length, width, kerf } = board;
      const blocks = stripBlocks({ length: length + kerf, width, kerf }, pieces);
      if (blocks === undefined) throw new Error('too many');
      const found = heaviestBeside({ length: length + kerf, width, kerf }, wholesOf(wholes), knownStrips(blocks, worthOf));
      if ((found?.block.kinds.length ?? 0) > 1) beside++;
      expect(found?.value).toBe(mostOfBoard(board, wholes, each));
    }),
    { numRuns: 300, seed: SEED },
  );
  expect(beside).toBeGreaterThan(20);
});

it('strips by what they measure together are never worth less, and none is there more often than it is', () => {
  fc.assert(
    fc.property(boards, ({ board, wholes, kinds }) => {
      const { pieces, worthOf, each } = stripsOf(kinds);
      const { length, width, kerf } = board;
      const likely = likelyStrips(
        { length: length + kerf, width, kerf },
        pieces,
        widestAcross({ width, kerf }, pieces.widths),
        worthOf,
      );
      const found = likely && heaviestBeside({ length: length + kerf, width, kerf }, wholesOf(wholes), likely);
      expect(found?.value).toBeGreaterThanOrEqual(mostOfBoard(board, wholes, each));
      for (const [at, kind] of found?.block.kinds.entries() ?? [])
        expect(found?.block.counts[at]).toBeLessThanOrEqual(pieces.counts[kind] ?? 0);
    }),
    { numRuns: 300, seed: SEED },
  );
});
