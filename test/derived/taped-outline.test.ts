import { fc, test } from '@fast-check/vitest';
import { outlineFromSides, type Point } from 'soffitwright';
import { describe, expect } from 'vitest';

const runs = { seed: 20_261_126, numRuns: 500 };

const apart = (a: Point, b: Point): number => Math.sqrt((a.x - b.x) ** 2 + (a.y - b.y) ** 2);

describe('four walls and two diagonals', () => {
  // With a wall a, a lean l and a height h the diagonals are (a - l)^2 + h^2 and (a + l)^2 + h^2: their difference is 4 a l.
  test.prop(
    [fc.integer({ min: 2000, max: 9000 }), fc.integer({ min: 2000, max: 9000 }), fc.integer({ min: -300, max: 300 })],
    runs,
  )('of a parallelogram give the lean that the diagonals give by themselves', (wall, height, lean) => {
    const side = Math.sqrt(lean * lean + height * height);
    const diagonals = [Math.sqrt((wall + lean) ** 2 + height ** 2), Math.sqrt((wall - lean) ** 2 + height ** 2)];
    const { outOfSquare, closingError } = outlineFromSides({ sides: [wall, side, wall, side], diagonals });
    expect(outOfSquare).toBeCloseTo(Math.abs(diagonals[1] ** 2 - diagonals[0] ** 2) / (4 * wall), 2);
    expect(closingError).toBeLessThan(0.002);
  });

  // A room that is known by its corners, taped without error: the same room comes back, turned so that its first wall is along x.
  const anyRoom = fc.tuple(...Array.from({ length: 8 }, () => fc.integer({ min: -900, max: 900 }))).map((off): Point[] => [
    { x: off[0], y: off[1] },
    { x: 5000 + off[2], y: off[3] },
    { x: 5000 + off[4], y: 4000 + off[5] },
    { x: off[6], y: 4000 + off[7] },
  ]);
  test.prop([anyRoom, fc.integer({ min: -60, max: 60 })], runs)(
    'of a room known by its corners give that room, and the error of one diagonal',
    (room, error) => {
      const sides = room.map((corner, i) => apart(corner, room[(i + 1) % 4]));
      const [first, second] = [apart(room[0], room[2]), apart(room[1], room[3])];
      const { outline, closingError, outOfSquare } = outlineFromSides({ sides, diagonals: [first, second + error] });
      for (let i = 0; i < 4; i++) {
        for (let k = 0; k < i; k++) expect(apart(outline[i], outline[k])).toBeCloseTo(apart(room[i], room[k]), 2);
      }
      expect(closingError).toBeCloseTo(Math.abs(error), 2);
      // How far each wall goes the way that it should not: the side walls along the first, the one opposite across it.
      const [base, ...others] = room.map((corner, i) => ({
        x: room[(i + 1) % 4].x - corner.x,
        y: room[(i + 1) % 4].y - corner.y,
      }));
      const out = others.map(({ x, y }, i) => (i === 1 ? base.x * y - base.y * x : base.x * x + base.y * y) / sides[0]);
      expect(outOfSquare).toBeCloseTo(Math.max(...out.map(Math.abs)), 2);
    },
  );
});
