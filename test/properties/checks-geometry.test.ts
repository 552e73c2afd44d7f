import { fc, test } from '@fast-check/vitest';
import { checkLayout, type Finding, type LayoutCheck, type Point } from 'soffitwright';
import { describe, expect } from 'vitest';
import type { CheckByHand } from '../generators/layoutsByHand.js';
import { TURNS, turnedAbout } from '../generators/turnedAbout.js';

const SEED = 20_261_125;
const runs = (numRuns: number) => ({ seed: SEED, numRuns });

/** Only where pieces lie is looked at here, in rooms that are covered to the wall and without gaps. */
const RULES = { 'perimeter.gap': 0, 'joint.gap': 0 };
const PLACE = ['cover-gap', 'overlap', 'outside-room', 'over-opening', 'perimeter-gap'];

interface CutRoom {
  readonly check: CheckByHand;
  readonly turn: number;
}

/**
 * A room with two ragged, slanting sides, cut exactly into pieces: bands between levels, each band in two at a line that leans.
 * Cuts meet the walls wherever they fall, so that corners are snapped to the grid.
 */
const cutRoom: fc.Arbitrary<CutRoom> = fc
  .record({
    levels: fc.array(fc.integer({ min: 150, max: 900 }), { minLength: 2, maxLength: 5 }),
    left: fc.array(fc.integer({ min: 0, max: 800 }), { minLength: 6, maxLength: 6 }),
    right: fc.array(fc.integer({ min: 0, max: 800 }), { minLength: 6, maxLength: 6 }),
    middle: fc.array(fc.integer({ min: 0, max: 300 }), { minLength: 12, maxLength: 12 }),
    shares: fc.array(fc.integer({ min: 15, max: 85 }), { minLength: 6, maxLength: 6 }),
    turn: fc.integer({ min: 0, max: TURNS.length - 1 }),
  })
  .map(({ levels, left, right, middle, shares, turn }) => {
    const heights = [0, ...levels].map((_, i, steps) => steps.slice(0, i + 1).reduce((sum, step) => sum + step, 0));
    const wall = (side: readonly number[], from: number) => (y: number) => {
      const i = Math.max(0, heights.findIndex((height) => height >= y) - 1);
      const share = (y - heights[i]) / (heights[i + 1] - heights[i]);
      return from + side[i] + (side[i + 1] - side[i]) * share;
    };
    const [low, high] = [wall(left, 0), wall(right, 2200)];
    // A cut inside each step, and one at each corner of the walls.
    const cuts = heights.slice(1).flatMap((height, i) => [heights[i] + ((height - heights[i]) * shares[i]) / 100, height]);
    const pieces = [0, ...cuts.slice(0, -1)].flatMap((y0, i) => {
      const y1 = cuts[i];
      const [at0, at1] = [1000 + middle[i], 1000 + middle[i + 1]];
      const piece = (name: string, outline: Point[]) => ({ id: `${i + 1}.${name}`, outline, board: `${i + 1}.${name}` });
      const near = [
        { x: low(y0), y: y0 },
        { x: at0, y: y0 },
        { x: at1, y: y1 },
        { x: low(y1), y: y1 },
      ];
      const far = [
        { x: at0, y: y0 },
        { x: high(y0), y: y0 },
        { x: high(y1), y: y1 },
        { x: at1, y: y1 },
      ];
      return [piece('1', near), piece('2', far)];
    });
    const outline = [...heights.map((y) => ({ x: low(y), y })), ...[...heights].reverse().map((y) => ({ x: high(y), y }))];
    const joist = (x: number, i: number) => ({
      id: `J${i + 1}`,
      start: { x, y: 0 },
      end: { x, y: heights[heights.length - 1] },
      width: 50,
      sd: 0,
      presence: 1,
      known: 'given' as const,
    });
    const check: CheckByHand = {
      room: { outline },
      joists: [400, 800, 1200, 1600, 2000, 2400].map(joist),
      boards: [{ id: 'b', length: 3000, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
      layout: { pieces, boards: pieces.map(({ id }) => ({ id, stock: 'b' })) },
      rules: RULES,
    };
    return { check, turn };
  });

const placesOf = (check: LayoutCheck): Finding[] => checkLayout(check).filter(({ code }) => PLACE.includes(code));

const hurt = ({ check, turn }: CutRoom, change: (pieces: LayoutCheck['layout']['pieces']) => LayoutCheck['layout']['pieces']) =>
  placesOf(turnedAbout({ ...check, layout: { ...check.layout, pieces: change(check.layout.pieces) } }, TURNS[turn][1]));

describe('where pieces lie, in rooms with slanting walls', () => {
  test.prop([cutRoom], runs(150))('is right when the room is cut up exactly', (room) => {
    expect(hurt(room, (pieces) => pieces)).toEqual([]);
  });

  test.prop([cutRoom, fc.nat()], runs(100))('is wrong when a piece is missing', (room, pick) => {
    const codes = hurt(room, (pieces) => pieces.filter((_, i) => i !== pick % pieces.length)).map(({ code }) => code);
    expect(codes).toContain('cover-gap');
  });

  test.prop([cutRoom, fc.nat(), fc.constantFrom([12, 0], [-12, 0], [0, 12], [0, -12], [9, 9])], runs(150))(
    'is wrong when a piece is moved by more than any gap',
    (room, pick, [dx, dy]) => {
      const codes = hurt(room, (pieces) =>
        pieces.map((piece, i) =>
          i === pick % pieces.length ? { ...piece, outline: piece.outline.map(({ x, y }) => ({ x: x + dx, y: y + dy })) } : piece,
        ),
      ).map(({ code }) => code);
      expect(codes.some((code) => code === 'overlap' || code === 'outside-room')).toBe(true);
      expect(codes).toContain('cover-gap');
    },
  );

  test.prop([cutRoom, fc.nat(), fc.nat(), fc.integer({ min: 20, max: 60 })], runs(100))(
    'is wrong when one corner of a piece is drawn out',
    (room, pick, corner, out) => {
      const codes = hurt(room, (pieces) =>
        pieces.map((piece, i) => {
          if (i !== pick % pieces.length) return piece;
          const at = corner % piece.outline.length;
          const sign = at === 0 || at === 3 ? -1 : 1;
          return {
            ...piece,
            outline: piece.outline.map((point, k) => (k === at ? { ...point, x: point.x + sign * out } : point)),
          };
        }),
      ).map(({ code }) => code);
      expect(codes.some((code) => code === 'overlap' || code === 'outside-room')).toBe(true);
    },
  );

  test.prop([cutRoom, fc.integer({ min: 0, max: 10_000 })], runs(60))(
    'is told the same in whatever order the pieces come',
    (room, seed) => {
      const summary = (findings: readonly Finding[]) =>
        findings.map(({ code, value, limit, where }) => JSON.stringify([code, value, limit, where?.at])).sort();
      const without = (pieces: LayoutCheck['layout']['pieces']) => pieces.slice(1);
      const shuffled = (pieces: LayoutCheck['layout']['pieces']) =>
        [...without(pieces)].sort(
          (a, b) =>
            (((a.id.charCodeAt(0) * 31 + a.id.charCodeAt(2) * 17) * (seed + 1)) % 101) -
            (((b.id.charCodeAt(0) * 31 + b.id.charCodeAt(2) * 17) * (seed + 1)) % 101),
        );
      expect(summary(hurt(room, shuffled))).toEqual(summary(hurt(room, without)));
    },
  );
});
