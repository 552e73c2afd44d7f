import { logarithm } from './exponential.js';
import type { Setting, System } from './system.js';

/**
 * The exact Gaussian answer for one system under one setting. The place of joist 0 has a flat prior; spacing, slopes, widths,
 * straying and drift are in the covariance, so that the marginal likelihood and every prediction come from one factorisation.
 */
export interface Fit {
  readonly system: System;
  readonly setting: Setting;
  /** Lower triangle of the covariance's Cholesky factor, row by row. */
  readonly factor: Float64Array;
  /** The factor's solution for a vector of ones, and for what the readings leave once the best place is taken off. */
  readonly ones: Float64Array;
  readonly rest: Float64Array;
  /** Weight of the place of joist 0, 1/mm2, and the place, mm from the near wall. */
  readonly weight: number;
  readonly place: number;
  /** Logarithm of the density of the readings, the flat prior of the place having density 1. */
  readonly logDensity: number;
}

const LOG_TWO_PI = 1.8378770664093453;
/** Beyond this a product of pivots is put away as a logarithm, so that it never overflows. */
const LARGE = 1e200;

/** Variances that a setting and a system's assumptions give to what is not known of the joists. */
export interface Variances {
  /** Of each joist on its own, mm2; of what each bay adds. */
  readonly own: number;
  /** What is added to the first for single joists. */
  readonly extra: ReadonlyMap<number, number>;
  readonly drift: number;
  /** Of the spacing, mm2; of the slopes, (mm/m)2. */
  readonly spacing: number;
  readonly skew: number;
  readonly fan: number;
  readonly ownSkew: number;
  /** Of the width all joists have in common and of each joist's own, mm2. */
  readonly width: number;
  readonly ownWidth: number;
}

export function variancesOf({ spread, widthSd, extra, assumptions }: System, setting: Setting): Variances {
  return {
    own: setting.straying * setting.straying,
    extra,
    drift: setting.drift * setting.drift,
    spacing: spread * spread,
    skew: setting.skew * setting.skew,
    fan: setting.fan * setting.fan,
    ownSkew: assumptions.ownSkew * assumptions.ownSkew,
    width: widthSd * widthSd,
    ownWidth: assumptions.ownWidthSd * assumptions.ownWidthSd,
  };
}

/** Drift that two joists have in common: they are counted from the leftmost one that was read, drift starts there. */
export function sharedBays(one: number, other: number): number {
  if (one > 0 && other > 0) return Math.min(one, other);
  if (one < 0 && other < 0) return one > other ? -one : -other;
  return 0;
}

export function fitOf(system: System, setting: Setting): Fit {
  const { count, joist, value, spacing } = system;
  const factor = factorised(system, variancesOf(system, setting));
  const ones = new Float64Array(count);
  const rest = new Float64Array(count);
  let weight = 0;
  let onRest = 0;
  for (let i = 0, row = 0; i < count; row += ++i) {
    let one = 1;
    let left = value[i] - spacing * joist[i];
    for (let k = 0; k < i; k++) {
      one -= factor[row + k] * ones[k];
      left -= factor[row + k] * rest[k];
    }
    const pivot = factor[row + i];
    ones[i] = one / pivot;
    rest[i] = left / pivot;
    weight += ones[i] * ones[i];
    onRest += ones[i] * rest[i];
  }
  const place = onRest / weight;
  let quadratic = 0;
  for (let i = 0; i < count; i++) {
    rest[i] -= place * ones[i];
    quadratic += rest[i] * rest[i];
  }
  const logDensity = system.within - ((count - 1) * LOG_TWO_PI + logarithm(weight) + quadratic) / 2 - logOfPivots(factor, count);
  return { system, setting, factor, ones, rest, weight, place, logDensity };
}

/** Variance of what a joist strays on its own. */
export const ownOf = (joist: number, { own, extra }: Variances): number =>
  extra.size === 0 ? own : own + (extra.get(joist) ?? 0);

/** Cholesky factor of the readings' covariance. */
function factorised(system: System, variances: Variances): Float64Array {
  const { count, joist, off, v, variance } = system;
  const { drift, spacing, skew, fan, ownSkew, width, ownWidth } = variances;
  const factor = new Float64Array((count * (count + 1)) / 2);
  for (let i = 0, row = 0; i < count; row += ++i) {
    const si = joist[i];
    for (let j = 0, column = 0; j <= i; column += ++j) {
      const sj = joist[j];
      const vv = v[i] * v[j];
      const oo = off[i] * off[j];
      // Every joist that was read is at or right of joist 0, where drift starts.
      let c = drift * Math.min(si, sj) + spacing * si * sj + vv * (skew + fan * si * sj) + oo * width;
      if (si === sj) c += ownOf(si, variances) + vv * ownSkew + oo * ownWidth;
      if (i === j) c += variance[i];
      for (let k = 0; k < j; k++) c -= factor[row + k] * factor[column + k];
      factor[row + j] = j < i ? c / factor[column + j] : Math.sqrt(c);
    }
  }
  return factor;
}

/** Logarithm of the product of a factor's pivots. */
function logOfPivots(factor: Float64Array, count: number): number {
  let log = 0;
  let product = 1;
  for (let i = 0, row = 0; i < count; row += ++i) {
    product *= factor[row + i];
    if (product > LARGE) {
      log += logarithm(product);
      product = 1;
    }
  }
  return log + logarithm(product);
}
