import fc from 'fast-check';
import { type Layer, type Opening, type PlacementRequest, type Point, rectangle, ruleSets, tryPlaceBoards } from 'soffitwright';
import { expect, it } from 'vitest';
import { inFrame } from '../../src/boards/findings/laidCeiling.js';
import { jointWishes } from '../../src/boards/jointWishes.js';
import { placementProblem } from '../../src/boards/placementProblem.js';
import { rowWishes } from '../../src/boards/rowWishes.js';

const place = (across: number, along: number): fc.Arbitrary<Point> =>
  fc.record({ x: fc.integer({ min: 0, max: across }), y: fc.integer({ min: 0, max: along }) });

/** A room with a window, a hatch, lights and old joints here and there, its joists along y. */
const anyCeiling: fc.Arbitrary<PlacementRequest> = fc
  .record({
    across: fc.integer({ min: 2500, max: 4800 }),
    along: fc.integer({ min: 2400, max: 3600 }),
    first: fc.integer({ min: 30, max: 200 }),
  })
  .chain(({ across, along, first }) =>
    fc
      .record({
        lights: fc.array(place(across - 400, along - 400), { maxLength: 3 }),
        hatch: place(across - 1000, along - 1000),
        old: fc.array(fc.tuple(place(across, along), fc.boolean(), fc.integer({ min: 300, max: 2400 })), { maxLength: 3 }),
        windows: fc.subarray([0, 1, 2, 3]),
        width: fc.constantFrom(35, 47),
      })
      .map(({ lights, hatch, old, windows, width }): PlacementRequest => {
        const openings: Opening[] = [
          ...lights.map(({ x, y }): Opening => ({ kind: 'light', centre: { x: x + 200, y: y + 200 }, diameter: 70 })),
          {
            kind: 'hatch',
            outline: rectangle(500, 400).map(({ x, y }) => ({ x: x + hatch.x + 250, y: y + hatch.y + 300 })),
          },
        ];
        const joints = old.map(
          ([from, up, length]) => [from, up ? { ...from, y: from.y + length } : { ...from, x: from.x + length }] as const,
        );
        const lining: Layer[] = [{ kind: 'plasterboard', thickness: 9.5, joints }];
        return {
          room: { outline: rectangle(across, along), openings, walls: windows.map((edge) => ({ edge, window: true })) },
          joists: { direction: 'y', first, spacing: 400, last: across - 30, width },
          lining,
          boards: [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
          rules: ruleSets.uk,
          budget: 500,
        };
      }),
  );

const CODES = {
  onOldJoint: 'joint-over-old-joint',
  nearHatchCorner: 'joint-near-hatch-corner',
  nearWindow: 'raking-light',
  nearOpening: 'joint-near-opening',
} as const;

it('a joint has a fault for the search just where the finished layout has a finding', () => {
  let told = 0;
  fc.assert(
    fc.property(anyCeiling, (request) => {
      const attempt = tryPlaceBoards(request);
      if (!attempt.ok) return;
      const { pieces, rows, findings } = attempt.value;
      const problem = placementProblem(request);
      const [{ frame, mirrored, toPlan }] = problem.parts;
      const origin = inFrame(frame, toPlan(0, 0));
      const [u, v] = [
        (at: number): number => (mirrored.u ? -1 : 1) * (Math.round(at * 1000) - origin.u),
        (at: number): number => (mirrored.v ? -1 : 1) * (Math.round(at * 1000) - origin.v),
      ];
      const bands = rows.map(({ low, high, width, ripped }) => {
        const [a, b] = [v(low), v(high)].sort((p, q) => p - q);
        return { low: a, high: b, width: width * 1000, ripped, part: 0, gap: 0 };
      });
      const wishes = jointWishes(problem);
      const count = (code: string, kind: 'butt' | 'long'): number =>
        new Set(
          findings
            .filter((each) => each.code === code && each.message.startsWith(code === 'raking-light' ? 'The butt' : `A ${kind}`))
            .map(({ where }) => (kind === 'butt' ? where?.pieces?.join(' ') : where?.row)),
        ).size;
      const joints = pieces
        .filter(({ ends }) => ends[0].meets === 'board')
        .map(({ row, ends }) => wishes(bands[row - 1], u(ends[0].position)));
      const ofRows = rowWishes(problem)({ gap: 0, bands: bands.sort((a, b) => a.low - b.low) });
      for (const [wish, code] of Object.entries(CODES) as [keyof typeof CODES, string][]) {
        expect([code, joints.filter((joint) => joint[wish] > 0).length]).toEqual([code, count(code, 'butt')]);
        if (wish !== 'nearWindow') expect([code, ofRows[wish]]).toEqual([code, count(code, 'long')]);
        told += count(code, 'butt') + count(code, 'long');
      }
      expect(ofRows.nearWindow).toBe(findings.filter(({ code }) => code === 'window-row-ripped').length);
    }),
    { numRuns: 30, seed: 6 },
  );
  expect(told).toBeGreaterThan(50);
}, 60_000);
