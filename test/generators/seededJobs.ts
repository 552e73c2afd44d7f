import fc from 'fast-check';
import { type BoardStock, rectangle } from 'soffitwright';

const board = (length: number, width: number): BoardStock => ({
  id: `${width} x ${length} x 12.5`,
  length,
  width,
  thickness: 12.5,
  massPerArea: 8.4,
  edge: 'square',
});

/** A rectangular room as houses have them: even joists, the first and the last beside their walls, boards of one or two sizes. */
export const anyJob = fc
  .record({
    width: fc.integer({ min: 1800, max: 6500 }),
    depth: fc.integer({ min: 1800, max: 6500 }),
    direction: fc.constantFrom('x' as const, 'y' as const),
    spacing: fc.constantFrom(350, 400, 450, 600),
    first: fc.integer({ min: 25, max: 100 }),
    beforeWall: fc.integer({ min: 25, max: 100 }),
    joistWidth: fc.constantFrom(38, 44, 47, 50, 63),
    old: fc.constantFrom(9.5, 12.5),
    boards: fc.constantFrom(
      [board(2400, 1200)],
      [board(3000, 1200)],
      [board(1800, 900)],
      [board(2400, 1200), board(3000, 1200)],
      [board(1800, 900), board(2400, 1200)],
    ),
  })
  .map(({ width, depth, direction, spacing, first, beforeWall, joistWidth, old, boards }) => ({
    room: { outline: rectangle(width, depth) },
    joists: { direction, first, spacing, last: (direction === 'y' ? width : depth) - beforeWall, width: joistWidth },
    lining: [{ kind: 'plasterboard' as const, thickness: old }],
    boards,
  }));

/** Jobs for timings, the same at every run; large and small rooms alike, where tests would lean to the extremes. */
export const seededJobs = (seed: number, count: number) => fc.sample(fc.noBias(anyJob), { seed, numRuns: count });
