import { exponential, logarithm } from './exponential.js';
import type { Fit } from './fit.js';
import { type Hole, holesOf } from './holes.js';
import { metTimber } from './metTimber.js';
import { normalSpread } from './normalSpread.js';
import { type PivotedFactor, pivotedFactor } from './pivotedFactor.js';
import type { Placing } from './placing.js';
import type { Target } from './predict.js';
import type { Sight } from './readings.js';

/**
 * What holes say beside a fit. Only the centres of joists beside holes are sampled; how everything else moves with them follows
 * exactly, since given those centres the rest is still Gaussian.
 */
export interface HoleEvidence {
  /** Logarithm of how well the fit foresaw the holes, beside the normal stand-in used in the fit. */
  readonly logHoles: number;
  /** Centres beside holes, and the independent ways in which they move. */
  readonly targets: readonly Target[];
  readonly factor: PivotedFactor;
  /** By how much the holes move the mean of each way and the covariance of any two, row by row. */
  readonly moved: Float64Array;
  readonly changed: Float64Array;
  /** Probability that a joist which a hole missed is there, by its number from the system's origin. */
  readonly presence: ReadonlyMap<number, number>;
}

/** Weighs evenly spread points of the centres beside holes by what the holes met. */
export function evidenceOfHoles(fit: Fit, sight: Sight, placing: Placing, points: number): HoleEvidence {
  const { holes, targets, means, covariance, clear } = holesOf(fit, sight, placing);
  // A hole clear of every joist could only have met timber falsely.
  const logClear = clear * logarithm(1 - fit.system.assumptions.falseHit);
  const factor = pivotedFactor(targets.length, covariance);
  const ways = factor.columns.length;
  const moments = { moved: new Float64Array(ways), changed: new Float64Array(ways * ways), presence: new Map<number, number>() };
  if (targets.length === 0) return { logHoles: logClear, targets, factor, ...moments };
  const sample = sampled(means, factor, points);
  const marked = new Set(fit.system.joist);
  const judged = Array.from({ length: points }, (_, p) => judge(fit, holes, targets, marked, sample.centres, p));
  const best = judged.reduce((greatest, { log }) => Math.max(greatest, log), -Infinity);
  const weights = judged.map(({ log }) => exponential(log - best));
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const shares = weights.map((weight) => weight / sum);
  judged.forEach(({ there }, p) => {
    for (const [joist, probability] of there) {
      moments.presence.set(joist, (moments.presence.get(joist) ?? 0) + shares[p] * probability);
    }
  });
  moveMoments(moments, sample.ways, shares, ways);
  return { logHoles: logClear + best + logarithm(sum / points), targets, factor, ...moments };
}

/** By how much the holes move a place, mm, and change its variance, mm2: `covariance` is that of the place with each target. */
export function movedBy(
  { factor, moved, changed }: HoleEvidence,
  covariance: (target: number) => number,
): { mean: number; variance: number } {
  const ways = moved.length;
  const along = new Float64Array(ways);
  let [mean, variance] = [0, 0];
  for (let d = 0; d < ways; d++) {
    const pivot = factor.pivots[d];
    let c = covariance(pivot);
    for (let b = 0; b < d; b++) c -= along[b] * factor.columns[b][pivot];
    along[d] = c / factor.columns[d][pivot];
    mean += along[d] * moved[d];
  }
  for (let d = 0; d < ways; d++) for (let b = 0; b < ways; b++) variance += along[d] * along[b] * changed[d * ways + b];
  return { mean, variance };
}

/** Points of the independent ways, and the centres that they put the targets at; point by point. */
interface Sample {
  readonly ways: Float64Array;
  readonly centres: Float64Array;
}

function sampled(means: readonly number[], { columns }: PivotedFactor, points: number): Sample {
  const size = means.length;
  const ways = new Float64Array(points * columns.length);
  const centres = new Float64Array(points * size);
  for (let p = 0; p < points; p++) {
    for (let i = 0; i < size; i++) centres[p * size + i] = means[i];
    columns.forEach((column, d) => {
      const z = normalSpread(p, points, d);
      ways[p * columns.length + d] = z;
      for (let i = 0; i < size; i++) centres[p * size + i] += column[i] * z;
    });
  }
  return { ways, centres };
}

/** How probable the holes are at one point, as a logarithm, and whether each joist that was missed is there. */
function judge(
  fit: Fit,
  holes: readonly Hole[],
  targets: readonly Target[],
  marked: ReadonlySet<number>,
  centres: Float64Array,
  p: number,
): { log: number; there: Map<number, number> } {
  const { width, widthSd, assumptions } = fit.system;
  const { falseMiss, falseHit, missing, wander } = assumptions;
  const missed = new Map<number, number>();
  let log = 0;
  for (const { at, near, hit } of holes) {
    const { target, away } = nearest(near, centres, p * targets.length, at);
    const timber = metTimber(away, wander, width, widthSd);
    if (hit === undefined) {
      const { joist } = targets[target];
      missed.set(joist, (missed.get(joist) ?? 1) * (1 - falseHit - (1 - falseMiss - falseHit) * timber));
    } else {
      // The true window in place of the normal stand-in.
      log += logarithm(Math.max(timber / width, 1e-12)) + (LOG_TWO_PI + logarithm(hit) + (away * away) / hit) / 2;
    }
  }
  const there = new Map<number, number>();
  for (const [joist, miss] of missed) {
    const absent = marked.has(joist) ? 0 : missing;
    const total = (1 - absent) * miss + absent * (1 - falseHit);
    log += logarithm(total);
    there.set(joist, ((1 - absent) * miss) / total);
  }
  return { log, there };
}

const LOG_TWO_PI = 1.8378770664093453;

/** The nearest of some targets to a place. */
function nearest(near: readonly number[], centres: Float64Array, row: number, at: number): { target: number; away: number } {
  let [target, away] = [near[0], Infinity];
  for (const each of near) {
    const distance = Math.abs(centres[row + each] - at);
    if (distance < away) [target, away] = [each, distance];
  }
  return { target, away };
}

/** Mean and covariance of the ways under the weights, less what they are without. */
function moveMoments(
  { moved, changed }: { moved: Float64Array; changed: Float64Array },
  z: Float64Array,
  shares: readonly number[],
  ways: number,
): void {
  const bare = new Float64Array(ways);
  const mean = new Float64Array(ways);
  shares.forEach((share, p) => {
    for (let d = 0; d < ways; d++) {
      const value = z[p * ways + d];
      bare[d] += value / shares.length;
      mean[d] += share * value;
      for (let b = 0; b < ways; b++) changed[d * ways + b] += (share - 1 / shares.length) * value * z[p * ways + b];
    }
  });
  for (let d = 0; d < ways; d++) {
    moved[d] = mean[d] - bare[d];
    for (let b = 0; b < ways; b++) changed[d * ways + b] -= mean[d] * mean[b] - bare[d] * bare[b];
  }
}
