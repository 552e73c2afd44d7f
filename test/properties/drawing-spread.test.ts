import fc from 'fast-check';
import { expect, it } from 'vitest';
import { spread, type Wanting } from '../../src/drawing/spread.js';

const wanting = fc
  .array(fc.record({ at: fc.integer({ min: 0, max: 300 }), size: fc.integer({ min: 1, max: 12 }) }), {
    minLength: 1,
    maxLength: 25,
  })
  .map((list): Wanting[] => [...list].sort((a, b) => a.at - b.at));

it('texts on a line never touch, keep their order, and balance their moves', () => {
  fc.assert(
    fc.property(wanting, (list) => {
      const places = spread(list, 1);
      for (let i = 1; i < list.length; i++) {
        const apart = places[i] - places[i - 1];
        expect(apart).toBeGreaterThanOrEqual((list[i].size + list[i - 1].size) / 2 + 1 - 1e-9);
      }
      // What is gained on one side is lost on the other: the sum of all moves is nothing.
      const moves = places.reduce((sum, place, i) => sum + place - list[i].at, 0);
      expect(moves).toBeCloseTo(0, 6);
    }),
    { seed: 20261125, numRuns: 300 },
  );
});

it('no other places without touching move the texts less', () => {
  fc.assert(
    fc.property(wanting, fc.integer({ min: 0, max: 24 }), fc.double({ min: -5, max: 5, noNaN: true }), (list, pick, by) => {
      const places = spread(list, 1);
      const total = (tried: readonly number[]): number => tried.reduce((sum, place, i) => sum + (place - list[i].at) ** 2, 0);
      const i = pick % list.length;
      const tried = places.map((place, k) => (k === i ? place + by : place));
      const touches = tried.some((place, k) => k > 0 && place - tried[k - 1] < (list[k].size + list[k - 1].size) / 2 + 1 - 1e-9);
      if (!touches) expect(total(tried)).toBeGreaterThanOrEqual(total(places) - 1e-6);
    }),
    { seed: 20261125, numRuns: 300 },
  );
});
