import { type Fit, ownOf, sharedBays, type Variances, variancesOf } from './fit.js';
import type { System } from './system.js';

/** What is asked of a fit: the centre of a joist at a place along it, its width, its node (the centre less its own straying), or a slope. */
export interface Target {
  readonly of: 'centre' | 'node' | 'width' | 'skew' | 'fan';
  /** Counted from the system's origin. */
  readonly joist: number;
  /** m from mid-length. */
  readonly v: number;
  /** Joist widths in the width. */
  readonly widths?: number;
}

/** A target as a sum of the unknowns: how much of each it holds. */
export interface Sum {
  readonly joist: number;
  /** 1 for a place: it has the place of joist 0, the spacing times its number, and the drift of the bays up to it. */
  readonly place: number;
  readonly skew: number;
  readonly fan: number;
  readonly width: number;
  /** Of the joist's own straying, own slope and own width. */
  readonly own: number;
  readonly ownSkew: number;
}

/** The centre of a joist at a place along it. */
export const centreOf = (joist: number, v: number): Sum => ({
  joist,
  place: 1,
  skew: v,
  fan: v * joist,
  width: 0,
  own: 1,
  ownSkew: v,
});
/** The slope of a joist. */
export const slopeOf = (joist: number): Sum => ({ joist, place: 0, skew: 1, fan: joist, width: 0, own: 0, ownSkew: 1 });
/** So many widths of a joist. */
export const widthOf = (joist: number, width: number): Sum => ({ joist, place: 0, skew: 0, fan: 0, width, own: 0, ownSkew: 0 });

export function sumOf({ of, joist, v, widths = 1 }: Target): Sum {
  switch (of) {
    case 'centre':
      return centreOf(joist, v);
    case 'node':
      return { joist, place: 1, skew: v, fan: v * joist, width: 0, own: 0, ownSkew: 0 };
    case 'width':
      return widthOf(joist, widths);
    case 'skew':
      return { joist, place: 0, skew: 1, fan: 0, width: 0, own: 0, ownSkew: 0 };
    default:
      return { joist, place: 0, skew: 0, fan: 1, width: 0, own: 0, ownSkew: 0 };
  }
}

/** Covariance of two sums before the readings. */
export function before(one: Sum, other: Sum, variances: Variances): number {
  const { joist: k } = one;
  const { joist: m } = other;
  let c =
    one.skew * other.skew * variances.skew + one.fan * other.fan * variances.fan + one.width * other.width * variances.width;
  c += one.place * other.place * (variances.drift * sharedBays(k, m) + variances.spacing * k * m);
  if (k !== m) return c;
  return (
    c +
    one.own * other.own * ownOf(k, variances) +
    one.ownSkew * other.ownSkew * variances.ownSkew +
    one.width * other.width * variances.ownWidth
  );
}

/** What a fit says of sums of the unknowns. */
export interface Answer {
  readonly means: Float64Array;
  /** Covariance of any two of them. */
  readonly covariance: (i: number, j: number) => number;
}

/** Means and covariances of sums of the unknowns: one pass through the factor answers them all. */
export function answer(fit: Fit, sums: readonly Sum[]): Answer {
  const { system, ones, rest, weight } = fit;
  const variances = variancesOf(system, fit.setting);
  const size = sums.length;
  const solved = solve(fit, sums, variances);
  const means = Float64Array.from(
    sums,
    ({ place, joist, width }) => place * (fit.place + system.spacing * joist) + width * system.width,
  );
  // What the place of joist 0 still adds: 1 less what the readings explain.
  const free = Float64Array.from(sums, ({ place }) => place);
  for (let i = 0; i < system.count; i++) {
    for (let c = 0; c < size; c++) {
      means[c] += solved[i * size + c] * rest[i];
      free[c] -= solved[i * size + c] * ones[i];
    }
  }
  const covariance = (one: number, other: number): number => {
    let explained = 0;
    for (let at = 0; at < solved.length; at += size) explained += solved[at + one] * solved[at + other];
    return before(sums[one], sums[other], variances) - explained + (free[one] * free[other]) / weight;
  };
  return { means, covariance };
}

/** The sums' covariances with the readings, solved by the fit's factor: a row for each reading. */
function solve({ system, factor }: Fit, sums: readonly Sum[], variances: Variances): Float64Array {
  const { count } = system;
  const size = sums.length;
  const solved = new Float64Array(count * size);
  for (let i = 0, row = 0; i < count; row += ++i) {
    const at = i * size;
    for (let c = 0; c < size; c++) solved[at + c] = withReading(sums[c], i, system, variances);
    for (let j = 0; j < i; j++) {
      const by = factor[row + j];
      const from = j * size;
      for (let c = 0; c < size; c++) solved[at + c] -= by * solved[from + c];
    }
    const pivot = factor[row + i];
    for (let c = 0; c < size; c++) solved[at + c] /= pivot;
  }
  return solved;
}

function withReading(sum: Sum, i: number, { joist, off, v }: System, variances: Variances): number {
  const k = sum.joist;
  const s = joist[i];
  let c = v[i] * (sum.skew * variances.skew + sum.fan * variances.fan * s) + off[i] * sum.width * variances.width;
  if (sum.place !== 0) c += sum.place * (variances.spacing * k * s + variances.drift * sharedBays(k, s));
  if (k !== s) return c;
  return c + sum.own * ownOf(k, variances) + sum.ownSkew * v[i] * variances.ownSkew + sum.width * off[i] * variances.ownWidth;
}

/** Means of the targets, and the covariance of any two of them; positions in mm from the near wall. */
export function predict(fit: Fit, targets: readonly Target[]): { means: number[]; covariance: (i: number, j: number) => number } {
  const { means, covariance } = answer(fit, targets.map(sumOf));
  return { means: Array.from(means), covariance };
}
