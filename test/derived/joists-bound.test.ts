import { describe, expect, it } from 'vitest';
import { predict } from '../../src/joists/predict.js';
import { latticeBound } from '../bench/latticeBound.js';
import { fitKnown } from '../generators/knownPlacing.js';

/*
 * Derived: the Cramer-Rao bound of place and period of a lattice whose indices are known, for independent errors
 * (variance of the period = variance of a reading / sum of squared deviations of the indices) and for errors that accumulate
 * (generalised least squares with the covariance of a random walk). The bound is the one against which sparse period estimators
 * are measured by Fogel and Gavish (1988), Casey and Sadler (IEEE Trans. Signal Processing 44, 1996), Sidiropoulos, Swami and
 * Sadler (same journal 53, 2005) and McKilliam, Clarkson and Quinn (2014). The values were worked out from those formulas by
 * separate programs; two of them are given in closed form below.
 */

interface Row {
  readonly s: readonly number[];
  readonly sd: number;
  readonly own?: number;
  readonly bay?: number;
  readonly spacing?: number;
  readonly place?: number;
  readonly at?: Readonly<Record<number, number>>;
}

const INDEPENDENT: readonly Row[] = [
  { s: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9], sd: 5, spacing: 0.5505, place: 2.9388, at: { 5: 1.6049, 12: 4.421 } },
  { s: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9], sd: 20, spacing: 2.2019, place: 11.7551 },
  { s: [0, 1, 4, 6, 11], sd: 5, spacing: 0.5691, place: 3.357, at: { 3: 2.3738, 8: 3.0326, 15: 6.4332 } },
  { s: [0, 1, 10, 11], sd: 5, spacing: 0.4975, place: 3.7064, at: { 5: 2.5123, 15: 5.3469 } },
  { s: [0, 3, 7], sd: 5, spacing: 1.0067, place: 4.4266, at: { 1: 3.7217, 10: 7.3061 } },
  { s: [0, 1], sd: 6, spacing: 8.4853, at: { 10: 80.7217 } },
  { s: [0, 0, 0, 9, 9, 9], sd: 5, spacing: 0.4536, place: 2.8868, at: { 4: 2.0538, 12: 3.9675 } },
];

const ACCUMULATED: readonly Row[] = [
  { s: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9], bay: 3, sd: 0.001, spacing: 1 },
  { s: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9], bay: 3, sd: 5, spacing: 1.1732 },
  { s: [0, 4, 9], bay: 3, sd: 5, spacing: 1.2711, place: 4.6534, at: { 2: 4.5787, 6: 4.6763, 9: 4.7811, 12: 9.0235 } },
  { s: [0, 4, 9], bay: 3, sd: 0.001, spacing: 1, place: 0.001, at: { 2: 3, 6: 3.2863, 12: 6 } },
  { s: [0, 4, 9], own: 3, sd: 4, spacing: 0.7841, place: 4.4584, at: { 2: 4.5476, 4: 3.0334, 12: 7.3121 } },
  { s: [0, 0, 9, 9], bay: 2, own: 3, sd: 4, spacing: 0.9296, place: 4.1231, at: { 0: 2.8284, 5: 5.1472, 12: 7.5572 } },
];

/** The period is free in the bound; here it is all but free. */
const FREE = 8000;
const SPACING = 400;

const nameOf = ({ s, sd, own = 0, bay = 0 }: Row): string => `joists ${s.join(' ')}, reading ${sd}, own ${own}, a bay ${bay}`;

describe.each([
  ['independent straying', INDEPENDENT],
  ['straying that accumulates', ACCUMULATED],
] as const)('the fit attains the bound for %s', (_, rows) => {
  it.each(rows.map((row) => [nameOf(row), row] as const))('%s', (_name, { s, sd, own = 0, bay = 0, spacing, place, at = {} }) => {
    const values = s.map((k) => 500 + SPACING * k);
    const fit = fitKnown({ joists: s, values, sd, own, bay, spacing: SPACING, spread: FREE });
    const { covariance } = predict(fit, [
      { of: 'node', joist: 0, v: 0 },
      { of: 'node', joist: 1, v: 0 },
    ]);
    // Joist 1 adds a bay of drift to the spacing of the even line.
    if (bay === 0 && spacing !== undefined) {
      expect(Math.sqrt(covariance(0, 0) + covariance(1, 1) - 2 * covariance(0, 1))).toBeCloseTo(spacing, 3);
    }
    if (place !== undefined) expect(Math.sqrt(covariance(0, 0))).toBeCloseTo(place, 3);
    for (const [joist, expected] of Object.entries(at)) {
      const centre = predict(fit, [{ of: 'centre', joist: Number(joist), v: 0 }]);
      expect(Math.sqrt(centre.covariance(0, 0)), `joist ${joist}`).toBeCloseTo(expected, 3);
    }
  });

  it.each(rows.map((row) => [nameOf(row), row] as const))(
    'so does the bound of the bench: %s',
    (_name, { s, sd, own = 0, bay = 0, spacing, place, at = {} }) => {
      const bound = latticeBound(
        s.map((joist) => ({ joist, sd })),
        { own, bay },
      );
      if (spacing !== undefined) expect(bound.spacing).toBeCloseTo(spacing, 3);
      if (place !== undefined) expect(bound.place).toBeCloseTo(place, 3);
      for (const [joist, expected] of Object.entries(at)) expect(bound.joist(Number(joist))).toBeCloseTo(expected, 3);
    },
  );
});

describe('closed forms', () => {
  const sdAt = (joists: readonly number[], sd: number, own: number, bay: number, joist: number): number => {
    const values = joists.map((k) => 500 + SPACING * k);
    const fit = fitKnown({ joists, values, sd, own, bay, spacing: SPACING, spread: FREE });
    return Math.sqrt(predict(fit, [{ of: 'centre', joist, v: 0 }]).covariance(0, 0));
  };

  it('an unmarked joist is never surer than its own straying, however many marks there are', () => {
    const joists = Array.from({ length: 400 }, (_, i) => (i < 200 ? i % 5 : 6 + (i % 5)));
    expect(sdAt(joists, 3, 6, 0, 5)).toBeGreaterThan(6);
  });

  it('ten marks of one joist do not beat down what the other joists stray', () => {
    const tenfold = sdAt([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 9], 5, 6, 0, 9);
    expect(tenfold).toBeCloseTo(5, 1);
  });

  it('between exact marks drift is a bridge: bay x sqrt((k - a)(b - k)/(b - a))', () => {
    for (const k of [1, 2, 3]) expect(sdAt([0, 4], 1e-4, 0, 3, k)).toBeCloseTo(3 * Math.sqrt((k * (4 - k)) / 4), 3);
  });

  it('m bays beyond exact marks n bays apart: bay x sqrt(m (1 + m / n))', () => {
    for (const m of [1, 3, 6]) expect(sdAt([0, 9], 1e-4, 0, 3, 9 + m)).toBeCloseTo(3 * Math.sqrt(m * (1 + m / 9)), 3);
  });
});

/*
 * Derived: the evidence of a nominal spacing T with standard deviation tau, place even over one spacing, is Gaussian and has a
 * closed form (Bayesian linear regression; MacKay, Information Theory, Inference, and Learning Algorithms, chapter 28, for the
 * Occam factor). With readings y, indices s, z = (y - mean y) - T (s - mean s), S = sum (s - mean s)^2, b = sum (s - mean s) z:
 * log Z = -(N - 1)/2 log(2 pi sigma^2) - log(N)/2 - log T - log(1 + tau^2 S / sigma^2)/2
 *         - (sum z^2 - b^2 / (S + sigma^2 / tau^2)) / (2 sigma^2).
 */
describe('evidence of a nominal spacing', () => {
  const joists = [0, 1, 4, 6, 11];
  const noise = [0.12573022, -0.13210486, 0.64042265, 0.10490012, -0.53566937];
  const values = joists.map((s, i) => 137 + 401.2 * s + 5 * noise[i]);
  const fit = fitKnown({ joists, values, sd: 5, own: 0, bay: 0, spacing: 400, spread: 2 });

  it('agrees with a two-dimensional quadrature', () => {
    expect(fit.logDensity - Math.log(400)).toBeCloseTo(-18.588313, 5);
  });

  it('so do the mean and variance of the spacing', () => {
    const { means, covariance } = predict(fit, [
      { of: 'node', joist: 0, v: 0 },
      { of: 'node', joist: 1, v: 0 },
    ]);
    expect(means[1] - means[0]).toBeCloseTo(400.88677, 4);
    expect(covariance(0, 0) + covariance(1, 1) - 2 * covariance(0, 1)).toBeCloseTo(0.2995806, 6);
  });

  it('agrees with the closed form for any numbers', () => {
    const [sigma, tau, spacing] = [6, 1.5, 406.4];
    const other = fitKnown({ joists, values, sd: sigma, own: 0, bay: 0, spacing, spread: tau });
    const mean = (list: readonly number[]): number => list.reduce((sum, each) => sum + each, 0) / list.length;
    const z = values.map((y, i) => y - mean(values) - spacing * (joists[i] - mean(joists)));
    const deviations = joists.map((s) => s - mean(joists));
    const [S, b, R] = [
      deviations.reduce((sum, d) => sum + d * d, 0),
      deviations.reduce((sum, d, i) => sum + d * z[i], 0),
      z.reduce((sum, each) => sum + each * each, 0),
    ];
    const log =
      -2 * Math.log(2 * Math.PI * sigma ** 2) -
      Math.log(5) / 2 -
      Math.log(1 + (tau ** 2 * S) / sigma ** 2) / 2 -
      (R - b ** 2 / (S + sigma ** 2 / tau ** 2)) / (2 * sigma ** 2);
    expect(other.logDensity).toBeCloseTo(log, 6);
  });
});
