import { fc, test } from '@fast-check/vitest';
import { isInputError, type Point, placeFixings, type Room } from 'soffitwright';
import { describe, expect } from 'vitest';
import { areaM2, isSimple } from '../../src/survey/outline.js';
import { restOfRoom } from '../../src/survey/restOfRoom.js';
import { anySlantedOutline, whereIs } from '../generators/anyOutlines.js';

const runs = (numRuns: number) => ({ seed: 20_261_126, numRuns });

const joists = { direction: 'y' as const, first: 10, spacing: 50, width: 47 };
const thousandth = (mm: number): number => Math.round(mm * 1000) / 1000;
const between = (a: Point, b: Point, share: number): Point => ({
  x: thousandth(a.x + (b.x - a.x) * share),
  y: thousandth(a.y + (b.y - a.y) * share),
});

/** A room round a middle, and zones that are slices of it, some with a corner part of the way along a slanting wall. */
const anyZonedRoom = anySlantedOutline.chain((outline) =>
  fc
    .record({
      first: fc.integer({ min: 0, max: outline.length - 1 }),
      slices: fc.array(fc.record({ sides: fc.integer({ min: 1, max: 2 }), share: fc.integer({ min: 0, max: 9 }) }), {
        minLength: 1,
        maxLength: 2,
      }),
    })
    .map(({ first, slices }): Room => {
      const middle = { x: 0, y: 0 };
      const at = (place: number): Point => outline[place % outline.length];
      let from = first;
      const zones = slices.flatMap(({ sides, share }, index) => {
        if (from + sides + 1 > first + outline.length) return [];
        const corners = Array.from({ length: sides + 1 }, (_, i) => at(from + i));
        const last = between(at(from + sides), at(from + sides + 1), share / 10);
        from += sides + 1;
        return [{ id: `z${index}`, outline: [middle, ...corners, ...(share === 0 ? [] : [last])], joists }];
      });
      return { outline, zones };
    }),
);

describe('what lies outside the zones of a room', { timeout: 60_000 }, () => {
  test.prop([anyZonedRoom], runs(500))('is all of the room but the zones, in simple outlines', (room) => {
    const { outline, zones = [] } = room;
    const rest = restOfRoom(room);
    for (const part of rest) for (const ring of [part.outline, ...part.holes]) expect(isSimple(ring)).toBe(true);
    const sum = [...zones.map((zone) => zone.outline), ...rest.map((part) => part.outline)].reduce(
      (m2, ring) => m2 + areaM2(ring),
      0,
    );
    const holes = rest.flatMap((part) => part.holes).reduce((m2, ring) => m2 + areaM2(ring), 0);
    const girth = outline.reduce((length, a, i) => {
      const b = outline[(i + 1) % outline.length];
      return length + Math.hypot(b.x - a.x, b.y - a.y);
    }, 0);
    // A corner on a slanting wall is moved by up to half a thousandth each way.
    expect(Math.abs(sum - holes - areaM2(outline))).toBeLessThan((girth * 0.001) / 1e6);
  });

  test.prop(
    [
      anyZonedRoom,
      fc.array(fc.tuple(fc.integer({ min: -3000, max: 3000 }), fc.integer({ min: -3000, max: 3000 })), {
        maxLength: 40,
        minLength: 40,
      }),
    ],
    runs(100),
  )('no place is in two parts, and none of the room in no part', (room, places) => {
    const rest = restOfRoom(room);
    for (const [x, y] of places) {
      const whereIn = (outline: readonly Point[]) => whereIs(outline, BigInt(x) * 1000n, BigInt(y) * 1000n);
      const inside = whereIn(room.outline);
      const parts = [
        ...(room.zones ?? []).map(({ outline }) => whereIn(outline)),
        ...rest.map(({ outline, holes }) => (holes.some((hole) => whereIn(hole) === 'inside') ? 'outside' : whereIn(outline))),
      ];
      if (inside === 'border' || parts.includes('border')) continue;
      expect(parts.filter((each) => each === 'inside')).toHaveLength(inside === 'inside' ? 1 : 0);
    }
  });

  test.prop([anyZonedRoom], runs(80))(
    'the zones are accepted; moved by a millimetre they reach beyond the room or over each other',
    (room) => {
      const problems = (given: Room): readonly string[] => {
        try {
          placeFixings({ room: given, layout: { pieces: [] }, joists });
          return [];
        } catch (error) {
          if (isInputError(error)) return error.problems.map(({ code }) => code);
          throw error;
        }
      };
      expect(problems(room).filter((code) => code.startsWith('zone'))).toEqual([]);
      const zones = (room.zones ?? []).map((zone) => ({
        ...zone,
        outline: zone.outline.map(({ x, y }) => ({ x: thousandth(x * 1.001), y: thousandth(y * 1.001) })),
      }));
      expect(problems({ ...room, zones })).toContain('zone-outside-room');
    },
  );
});
