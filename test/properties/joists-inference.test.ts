import { fc, it } from '@fast-check/vitest';
import MLR from 'ml-regression-multivariate-linear';
import { type Inference, inferJoists, type Mark, rectangle } from 'soffitwright';
import { describe, expect } from 'vitest';
import { type Survey, surveyOf } from '../generators/surveys.js';

const survey = fc.integer({ min: 1, max: 1_000_000 }).map((seed) => surveyOf(seed));
const runs = { seed: 20_261_125, numRuns: 25 } as const;

const infer = ({ room, marks, width }: Survey, direction: 'x' | 'y' = 'y'): Inference =>
  inferJoists({ room, marks, direction, width });

/** Centre of each joist at mid-length. */
const centresOf = ({ joists }: Inference): number[] => joists.map(({ start, end }) => (start.x + end.x) / 2);
const statedOf = ({ candidates }: Inference): unknown => candidates.map(({ spacing, probability }) => [spacing, probability]);

describe('inferJoists', { timeout: 60_000 }, () => {
  it.prop([survey], runs)('says the same twice', (drawn) => {
    expect(infer(drawn)).toEqual(infer(drawn));
  });

  it.prop([survey], runs)('does not depend on the order of the marks', (drawn) => {
    const turned = infer({ ...drawn, marks: [...drawn.marks].reverse() });
    const straight = infer(drawn);
    expect(statedOf(turned)).toEqual(statedOf(straight));
    expect(turned.joists).toEqual(straight.joists);
    const last = drawn.marks.length - 1;
    expect(turned.outliers.map((mark) => last - mark).sort((a, b) => a - b)).toEqual(straight.outliers);
  });

  it.prop([survey, fc.integer({ min: -50_000, max: 50_000 })], runs)('moves with the room', (drawn, by) => {
    const moved = infer({
      ...drawn,
      room: { outline: drawn.room.outline.map(({ x, y }) => ({ x: x + by, y: y - by })) },
      marks: drawn.marks.map((mark) => ({ ...mark, x: mark.x + by, y: mark.y - by })),
    });
    const straight = infer(drawn);
    const still = centresOf(straight);
    for (const [i, centre] of centresOf(moved).entries()) expect(centre - by).toBeCloseTo(still[i], 0);
    expect(moved.candidates[0].spacing).toEqual(straight.candidates[0].spacing);
  });

  it.prop([survey], runs)('turns with the room', (drawn) => {
    const swap = <P extends { x: number; y: number }>(point: P): P => ({ ...point, x: point.y, y: point.x });
    const turned = infer({ ...drawn, room: { outline: drawn.room.outline.map(swap) }, marks: drawn.marks.map(swap) }, 'x');
    const straight = infer(drawn);
    expect(turned.joists.map(({ start, end }) => [start.y, end.y])).toEqual(
      straight.joists.map(({ start, end }) => [start.x, end.x]),
    );
    expect(turned.confidence).toBe(straight.confidence);
  });

  it.prop([survey], runs)('lists probabilities that fall and add up to no more than one', (drawn) => {
    const { candidates, confidence, hypotheses } = infer(drawn);
    const stated = candidates.map(({ probability }) => probability);
    expect(stated).toEqual([...stated].sort((a, b) => b - a));
    expect(Math.abs(stated.reduce((sum, each) => sum + each, 0) - 1)).toBeLessThan(0.001 * stated.length);
    expect(confidence).toBe(stated[0]);
    expect(Math.abs(hypotheses.reduce((sum, { probability }) => sum + probability, 0) - 1)).toBeLessThan(0.001);
  });

  it.prop([survey], runs)('a mark far from every joist is listed and moves nothing', (drawn) => {
    const { joists } = infer(drawn);
    const genuine = drawn.of.filter((joist) => joist !== null).length;
    // Where few marks speak, one more may turn the reading of all of them.
    fc.pre(genuine >= 6 && joists.length >= 3 && infer(drawn).confidence > 0.95 && infer(drawn).outliers.length === 0);
    const y = drawn.marks[0].y;
    // Neither a half nor a third of a bay, which a closer spacing would explain.
    const at = joists[1].start.x + 0.37 * (joists[2].start.x - joists[1].start.x);
    const odd: Mark = { x: Math.round(at * 10) / 10, y, sd: 2 };
    const with_ = infer({ ...drawn, marks: [...drawn.marks, odd] });
    expect(with_.outliers).toContain(drawn.marks.length);
    const before = centresOf({ joists } as Inference);
    for (const [i, centre] of centresOf(with_).entries()) expect(Math.abs(centre - before[i])).toBeLessThan(joists[i].sd);
  });
});

const lattice = fc.record({
  first: fc.integer({ min: 150, max: 350 }),
  spacing: fc.integer({ min: 380, max: 480 }),
  slope: fc.integer({ min: -8, max: 8 }),
  noise: fc.array(fc.integer({ min: -90, max: 90 }), { minLength: 9, maxLength: 9 }),
});

describe('with the joists plain to see, nothing straying and every spacing alike, the answer is ordinary least squares', {
  timeout: 60_000,
}, () => {
  it.prop([lattice], runs)('place and spacing', ({ first, spacing, noise }) => {
    const marks = noise.map((away, k) => ({ x: first + k * spacing + away / 10, y: 2000, sd: 6 }));
    const inference = inferJoists({
      room: { outline: rectangle(first + 9 * spacing - 150, 4000) },
      marks,
      direction: 'y',
      width: 47,
      spacings: [430],
      assume: { spacingSd: 5000, otherSpacing: 0, irregular: 0, straying: [0], drift: [0] },
    });
    const line = new MLR(
      marks.map((_, k) => [k]),
      marks.map(({ x }) => [x]),
    );
    expect(Math.abs((inference.spacing?.value ?? 0) - line.weights[0][0])).toBeLessThan(0.0051);
    for (const [k, centre] of centresOf(inference).entries()) {
      expect(Math.abs(centre - line.predict([k])[0])).toBeLessThan(0.06);
    }
    // Sum of squared deviations of 0 to 8 is 60.
    expect(inference.spacing?.sd).toBeCloseTo(6 / Math.sqrt(60), 2);
  });

  it.prop([lattice], runs)('place, spacing and slope', ({ first, spacing, slope, noise }) => {
    const lines = [300, 2000, 3700];
    const marks = noise.map((away, k) => {
      const y = lines[k % 3];
      return { x: first + k * spacing + (slope * (y - 2000)) / 1000 + away / 10, y, sd: 6 };
    });
    const inference = inferJoists({
      room: { outline: rectangle(first + 9 * spacing - 150, 4000) },
      marks,
      direction: 'y',
      width: 47,
      spacings: [430],
      assume: {
        ...{ spacingSd: 5000, otherSpacing: 0, irregular: 0, straying: [0], drift: [0] },
        ...{ skew: 5000, askew: 0, fanned: 0, ownSkew: 0 },
      },
    });
    const plane = new MLR(
      marks.map(({ y }, k) => [k, y - 2000]),
      marks.map(({ x }) => [x]),
    );
    inference.joists.forEach(({ start, end }, k) => {
      expect(Math.abs(start.x - plane.predict([k, -2000])[0])).toBeLessThan(0.1);
      expect(Math.abs(end.x - plane.predict([k, 2000])[0])).toBeLessThan(0.1);
    });
  });
});
