import { type Fit, sharedBays, type Variances, variancesOf } from './fit.js';

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
interface Sum {
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

function sumOf({ of, joist, v, widths = 1 }: Target): Sum {
  const nothing = { joist, place: 0, skew: 0, fan: 0, width: 0, own: 0, ownSkew: 0 };
  switch (of) {
    case 'centre':
      return { ...nothing, place: 1, skew: v, fan: v * joist, own: 1, ownSkew: v };
    case 'node':
      return { ...nothing, place: 1, skew: v, fan: v * joist };
    case 'width':
      return { ...nothing, width: widths };
    case 'skew':
      return { ...nothing, skew: 1 };
    default:
      return { ...nothing, fan: 1 };
  }
}

/** Covariance of two targets before the readings. */
function before(one: Sum, other: Sum, variances: Variances): number {
  const { joist: k } = one;
  const { joist: m } = other;
  let c =
    one.skew * other.skew * variances.skew + one.fan * other.fan * variances.fan + one.width * other.width * variances.width;
  c += one.place * other.place * (variances.drift * sharedBays(k, m) + variances.spacing * k * m);
  if (k !== m) return c;
  return (
    c +
    one.own * other.own * variances.own +
    one.ownSkew * other.ownSkew * variances.ownSkew +
    one.width * other.width * variances.ownWidth
  );
}

/** A target's covariance with the readings, solved by the fit's factor. */
function solve({ system, factor }: Fit, sum: Sum, variances: Variances): Float64Array {
  const { count, joist, off, v } = system;
  const { own, drift, spacing, skew, fan, ownSkew, width, ownWidth } = variances;
  const solution = new Float64Array(count);
  const k = sum.joist;
  const [onSpacing, onDrift] = [sum.place * spacing * k, sum.place * drift];
  const [onSkew, onFan, onWidth] = [sum.skew * skew, sum.fan * fan, sum.width * width];
  for (let i = 0, row = 0; i < count; row += ++i) {
    const s = joist[i];
    let c = onSpacing * s + v[i] * (onSkew + onFan * s) + off[i] * onWidth;
    if (onDrift !== 0) c += onDrift * sharedBays(k, s);
    if (k === s) c += sum.own * own + sum.ownSkew * v[i] * ownSkew + sum.width * off[i] * ownWidth;
    for (let j = 0; j < i; j++) c -= factor[row + j] * solution[j];
    solution[i] = c / factor[row + i];
  }
  return solution;
}

/** Means of the targets, and the covariance of any two of them; positions in mm from the near wall. */
export function predict(fit: Fit, targets: readonly Target[]): { means: number[]; covariance: (i: number, j: number) => number } {
  const { ones, rest, weight, system } = fit;
  const variances = variancesOf(system, fit.setting);
  const sums = targets.map(sumOf);
  const solutions = sums.map((sum) => solve(fit, sum, variances));
  // What the place of joist 0 still adds: 1 less what the readings explain.
  const free = sums.map(({ place }, t) => place - dot(solutions[t], ones));
  const means = sums.map(
    ({ place, joist, width }, t) => place * (fit.place + system.spacing * joist) + width * system.width + dot(solutions[t], rest),
  );
  const covariance = (i: number, j: number): number =>
    before(sums[i], sums[j], variances) - dot(solutions[i], solutions[j]) + (free[i] * free[j]) / weight;
  return { means, covariance };
}

function dot(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < one.length; i++) sum += one[i] * other[i];
  return sum;
}

/** What a fit says of a row of joists from one number to another, counted from the system's origin. */
export interface Row {
  /** Places of the centres, mm from the near wall, and their variances, mm2: joist by joist, at each place along it in turn. */
  readonly means: Float64Array;
  readonly variances: Float64Array;
  /** Expected widths, mm. */
  readonly widths: Float64Array;
  /** Covariance of the centres at mid-length with the other targets, mm2: joist by joist, target by target. */
  readonly covariances: Float64Array;
}

/** What is asked of a row of joists. */
export interface RowAsked {
  readonly first: number;
  readonly last: number;
  /** Places along the joists, m from mid-length. */
  readonly along: readonly number[];
  /** How many timbers a joist is made of. */
  readonly timbers: (joist: number) => number;
  /** Other targets whose covariance with the centres is wanted. */
  readonly beside: readonly Target[];
}

/** {@link predict} for the centres of a row of joists, and for their widths. */
export function predictRow(fit: Fit, { first, last, along, timbers, beside }: RowAsked): Row {
  const variances = variancesOf(fit.system, fit.setting);
  const count = Math.max(0, last - first + 1);
  const row = {
    means: new Float64Array(count * along.length),
    variances: new Float64Array(count * along.length),
    widths: new Float64Array(count),
    covariances: new Float64Array(count * beside.length),
  };
  const others = beside.map((target) => told(fit, sumOf(target), variances));
  const sloping = fit.system.v.some((v) => v !== 0);
  const edges = fit.system.off.some((off) => off !== 0);
  for (let n = 0; n < count; n++) {
    const joist = first + n;
    const nothing = { joist, place: 0, skew: 0, fan: 0, width: 0, own: 0, ownSkew: 0 };
    const middle = told(fit, { ...nothing, place: 1, own: 1 }, variances);
    const slope = told(fit, { ...nothing, skew: 1, fan: joist, ownSkew: 1 }, variances, sloping);
    const [both, atMiddle, ofSlope] = [
      between(fit, middle, slope, variances),
      between(fit, middle, middle, variances),
      between(fit, slope, slope, variances),
    ];
    along.forEach((v, i) => {
      row.means[n * along.length + i] = middle.mean + v * slope.mean;
      row.variances[n * along.length + i] = atMiddle + v * (2 * both + v * ofSlope);
    });
    others.forEach((other, i) => {
      row.covariances[n * beside.length + i] = between(fit, middle, other, variances);
    });
    row.widths[n] = told(fit, { ...nothing, width: timbers(joist) }, variances, edges).mean;
  }
  return row;
}

/** One sum, solved. */
interface Told {
  readonly sum: Sum;
  readonly solution: Float64Array | undefined;
  readonly mean: number;
  readonly free: number;
}

/** What the readings tell of a sum; nothing when they do not bear on it. */
function told(fit: Fit, sum: Sum, variances: Variances, bears = true): Told {
  const beforehand = sum.place * (fit.place + fit.system.spacing * sum.joist) + sum.width * fit.system.width;
  if (!bears) return { sum, solution: undefined, mean: beforehand, free: sum.place };
  const solution = solve(fit, sum, variances);
  return { sum, solution, mean: beforehand + dot(solution, fit.rest), free: sum.place - dot(solution, fit.ones) };
}

function between(fit: Fit, one: Told, other: Told, variances: Variances): number {
  const explained = one.solution && other.solution ? dot(one.solution, other.solution) : 0;
  return before(one.sum, other.sum, variances) - explained + (one.free * other.free) / fit.weight;
}

/** Means of the nodes of joists (each joist's centre less its own straying) at mid-length, mm from the near wall. */
export function nodeMeansOf(fit: Fit): (joist: number) => number {
  const { system, factor, rest, place } = fit;
  const { count, joist, v } = system;
  const { drift, spacing } = variancesOf(system, fit.setting);
  // The readings' covariance, solved for what they leave: one multiplication a reading is then enough for any mean.
  const pull = Float64Array.from(rest);
  for (let i = count - 1; i >= 0; i--) {
    const row = (i * (i + 1)) / 2;
    pull[i] /= factor[row + i];
    for (let j = 0; j < i; j++) pull[j] -= factor[row + j] * pull[i];
  }
  return (k) => {
    let mean = place + system.spacing * k;
    for (let i = 0; i < v.length; i++) mean += pull[i] * (drift * sharedBays(k, joist[i]) + spacing * k * joist[i]);
    return mean;
  };
}
