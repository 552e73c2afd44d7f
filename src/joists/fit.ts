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

const LOG_TWO_PI = 1.8378770664093453;

/** Drift that two joists have in common: they are counted from the leftmost one that was read, drift starts there. */
const shared = (one: number, other: number): number => {
  if (one > 0 && other > 0) return Math.min(one, other);
  if (one < 0 && other < 0) return one > other ? -one : -other;
  return 0;
};

export function fitOf(system: System, setting: Setting): Fit {
  const { count, joist, off, v, variance, value, spacing, spread, widthSd } = system;
  const { ownSkew, ownWidthSd } = system.assumptions;
  const own = setting.straying * setting.straying;
  const drift = setting.drift * setting.drift;
  const skew = setting.skew * setting.skew;
  const fan = setting.fan * setting.fan;
  const spacingVariance = spread * spread;
  const widthVariance = widthSd * widthSd;
  const ownWidth = ownWidthSd * ownWidthSd;
  const factor = new Float64Array((count * (count + 1)) / 2);
  const ones = new Float64Array(count);
  const rest = new Float64Array(count);
  let logDeterminant = 0;
  let weight = 0;
  let onRest = 0;
  for (let i = 0, row = 0; i < count; row += ++i) {
    const [si, vi, oi] = [joist[i], v[i], off[i]];
    for (let j = 0, column = 0; j <= i; column += ++j) {
      const sj = joist[j];
      const vv = vi * v[j];
      let c = drift * shared(si, sj) + spacingVariance * si * sj + vv * (skew + fan * si * sj);
      if (oi !== 0) c += oi * off[j] * widthVariance;
      if (si === sj) c += own + vv * ownSkew * ownSkew + oi * off[j] * ownWidth;
      if (i === j) c += variance[i];
      for (let k = 0; k < j; k++) c -= factor[row + k] * factor[column + k];
      factor[row + j] = j < i ? c / factor[column + j] : Math.sqrt(c);
    }
    let one = 1;
    let left = value[i] - spacing * si;
    for (let k = 0; k < i; k++) {
      one -= factor[row + k] * ones[k];
      left -= factor[row + k] * rest[k];
    }
    const pivot = factor[row + i];
    ones[i] = one / pivot;
    rest[i] = left / pivot;
    logDeterminant += logarithm(pivot);
    weight += ones[i] * ones[i];
    onRest += ones[i] * rest[i];
  }
  const place = onRest / weight;
  let quadratic = 0;
  for (let i = 0; i < count; i++) {
    rest[i] -= place * ones[i];
    quadratic += rest[i] * rest[i];
  }
  const logDensity = system.within - ((count - 1) * LOG_TWO_PI + logarithm(weight) + quadratic) / 2 - logDeterminant;
  return { system, setting, factor, ones, rest, weight, place, logDensity };
}

/** A prediction before its covariance with others is asked for. */
interface Solved {
  readonly target: Target;
  readonly mean: number;
  /** The factor's solution for the target's covariance with the readings. */
  readonly solution: Float64Array;
  /** What the place of joist 0 still adds: 1 less what the readings explain. */
  readonly free: number;
}

/** Means of the targets, and the covariance of any two of them; positions in mm from the near wall. */
export function predict(fit: Fit, targets: readonly Target[]): { means: number[]; covariance: (i: number, j: number) => number } {
  const solved = targets.map((target) => solve(fit, target));
  const covariance = (i: number, j: number): number => {
    const [one, other] = [solved[i], solved[j]];
    let c = prior(fit, one.target, other.target);
    for (let k = 0; k < one.solution.length; k++) c -= one.solution[k] * other.solution[k];
    return c + (one.free * other.free) / fit.weight;
  };
  return { means: solved.map(({ mean }) => mean), covariance };
}

const isPlace = (target: Target): boolean => target.of === 'centre' || target.of === 'node';

function solve(fit: Fit, target: Target): Solved {
  const { system, factor, ones, rest } = fit;
  const { count } = system;
  const solution = new Float64Array(count);
  let mean = before(fit, target);
  let free = isPlace(target) ? 1 : 0;
  for (let i = 0, row = 0; i < count; row += ++i) {
    let c = withReading(fit, target, i);
    for (let k = 0; k < i; k++) c -= factor[row + k] * solution[k];
    solution[i] = c / factor[row + i];
    mean += solution[i] * rest[i];
    free -= solution[i] * ones[i];
  }
  return { target, mean, solution, free };
}

function before(fit: Fit, target: Target): number {
  if (isPlace(target)) return fit.place + fit.system.spacing * target.joist;
  return target.of === 'width' ? fit.system.width * (target.widths ?? 1) : 0;
}

function withReading({ system, setting }: Fit, target: Target, i: number): number {
  const [s, v, off] = [system.joist[i], system.v[i], system.off[i]];
  const { ownSkew, ownWidthSd } = system.assumptions;
  switch (target.of) {
    case 'width': {
      const own = target.joist === s ? ownWidthSd * ownWidthSd : 0;
      return off * (target.widths ?? 1) * (system.widthSd * system.widthSd + own);
    }
    case 'skew':
      return setting.skew * setting.skew * v;
    case 'fan':
      return setting.fan * setting.fan * v * s;
    default: {
      const k = target.joist;
      const own = target.of === 'centre' && k === s ? setting.straying * setting.straying + target.v * v * ownSkew * ownSkew : 0;
      return (
        own +
        setting.drift * setting.drift * shared(k, s) +
        system.spread * system.spread * k * s +
        target.v * v * (setting.skew * setting.skew + setting.fan * setting.fan * k * s)
      );
    }
  }
}

function prior({ system, setting }: Fit, one: Target, other: Target): number {
  const { ownSkew, ownWidthSd } = system.assumptions;
  const skew = setting.skew * setting.skew;
  const fan = setting.fan * setting.fan;
  if (isPlace(one) && isPlace(other)) {
    const same = one.joist === other.joist && one.of === 'centre' && other.of === 'centre';
    return (
      (same ? setting.straying * setting.straying + one.v * other.v * ownSkew * ownSkew : 0) +
      setting.drift * setting.drift * shared(one.joist, other.joist) +
      system.spread * system.spread * one.joist * other.joist +
      one.v * other.v * (skew + fan * one.joist * other.joist)
    );
  }
  if (one.of === 'width' && other.of === 'width') {
    const own = one.joist === other.joist ? ownWidthSd * ownWidthSd : 0;
    return (one.widths ?? 1) * (other.widths ?? 1) * (system.widthSd * system.widthSd + own);
  }
  const [place, slope] = isPlace(one) ? [one, other] : [other, one];
  if (isPlace(place)) {
    if (slope.of === 'skew') return skew * place.v;
    return slope.of === 'fan' ? fan * place.v * place.joist : 0;
  }
  if (one.of === other.of) return one.of === 'skew' ? skew : fan;
  return 0;
}
