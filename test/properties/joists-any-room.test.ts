import { fc, test } from '@fast-check/vitest';
import { inferJoists, type Joist, joistsFromPositions, type Point } from 'soffitwright';
import { describe, expect } from 'vitest';
import { anyOutline, whereIs } from '../generators/anyOutlines.js';

const runs = (numRuns: number) => ({ seed: 20_261_126, numRuns });

/** A room, and a place for a joist along y: often in line with a wall or through a corner. */
const anyRoomAndPlace = anyOutline.chain((outline) => {
  const xs = outline.map(({ x }) => x);
  return fc.record({
    outline: fc.constant(outline),
    place: fc.oneof(fc.constantFrom(...xs), fc.integer({ min: Math.min(...xs), max: Math.max(...xs) })),
  });
});

const thousandths = (mm: number): bigint => BigInt(Math.round(mm * 1000));

/** Places between the ends of all walls and all joists along a line, in halves of a thousandth. */
const between = (outline: readonly Point[], joists: readonly Joist[]): bigint[] => {
  const levels = [...outline.map(({ y }) => y), ...joists.flatMap(({ start, end }) => [start.y, end.y])]
    .map(thousandths)
    .sort((a, b) => Number(a - b));
  return levels.slice(1).flatMap((level, i) => (level - levels[i] > 4n ? [level + levels[i]] : []));
};

describe('a joist along y in a room of any shape', { timeout: 60_000 }, () => {
  test.prop([anyRoomAndPlace], runs(2000))(
    'runs wherever its centre line is in the room or on a wall, and nowhere else',
    (given) => {
      const { outline, place } = given;
      const joists = joistsFromPositions({ room: { outline }, direction: 'y', positions: [place], width: 50 });
      for (const level of between(outline, joists)) {
        const runsHere = joists.some(({ start, end }) => 2n * thousandths(start.y) < level && level < 2n * thousandths(end.y));
        const there = whereIs(outline, 2n * thousandths(place), level, 2000n);
        // A wall that slants may pass half a thousandth beside the middle of so short a stretch.
        expect(runsHere, `${place}, ${Number(level) / 2000}: ${there}`).toBe(there !== 'outside');
      }
    },
  );

  test.prop([anyRoomAndPlace], runs(500))('is one joist for each stretch, in order and apart', ({ outline, place }) => {
    const joists = joistsFromPositions({ room: { outline }, direction: 'y', positions: [place], width: 50 });
    const ids = joists.length === 1 ? ['J1'] : joists.map((_, i) => `J1${'abcdefghij'[i]}`);
    expect(joists.map(({ id }) => id)).toEqual(ids);
    joists.forEach(({ start, end }, i) => {
      expect(start.y).toBeLessThan(end.y);
      if (i > 0) expect(joists[i - 1].end.y).toBeLessThan(start.y);
    });
  });

  test.prop([anyOutline], runs(60))(
    'inferred from marks begins and ends at walls, and is in the room between them',
    (outline) => {
      const xs = outline.map(({ x }) => x);
      const [near, far] = [Math.min(...xs), Math.max(...xs)];
      const room = { outline };
      const given = Array.from({ length: Math.ceil((far - near) / 400) }, (_, i) => near + 130 + 400 * i).filter((x) => x < far);
      const marks = given.flatMap((x) =>
        joistsFromPositions({ room, direction: 'y', positions: [x] }).map(({ start, end }) => ({ x, y: (start.y + end.y) / 2 })),
      );
      const { joists } = inferJoists({ room, marks, direction: 'y', width: 47 });
      expect(joists.length).toBeGreaterThanOrEqual(given.length);
      for (const { start, end } of joists) {
        for (const at of [start, end]) expect(awayFrom(outline, at)).toBeLessThan(0.003);
        const [x, y] = [thousandths(start.x) + thousandths(end.x), thousandths(start.y) + thousandths(end.y)];
        if (end.y - start.y > 1) expect(whereIs(outline, x, y, 2000n)).not.toBe('outside');
      }
    },
  );
});

/** Distance of a point from the nearest wall, mm. */
const awayFrom = (outline: readonly Point[], { x, y }: Point): number =>
  Math.min(
    ...outline.map((a, i) => {
      const b = outline[(i + 1) % outline.length];
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      const share = Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy)));
      return Math.hypot(x - a.x - share * dx, y - a.y - share * dy);
    }),
  );
