import { exponential, logarithm } from './exponential.js';
import type { Fit } from './fit.js';
import { normalBelowQuick, normalPlace } from './normal.js';
import type { Placing } from './placing.js';
import { nodeMeansOf, predict, type Target } from './predict.js';
import type { Sight } from './readings.js';

/**
 * A weighted scatter of what one fit allows: places of the joists' nodes (each joist's centre less its own straying) and the
 * slopes. What a joist strays on its own stays exact: given the node it is normal.
 */
export interface Scatter {
  /** Number of the leftmost joist, counted from the system's origin, and how many there are. */
  readonly first: number;
  readonly joists: number;
  readonly points: number;
  /** Node of joist `j` at point `p`, mm from the near wall, at `p * joists + j`, at mid-length. */
  readonly nodes: Float64Array;
  /** Slope of joist `j` at point `p` is `skew[p] + fan[p] * (first + j)`, mm in a metre. */
  readonly skew: Float64Array;
  readonly fan: Float64Array;
  /** Weight of each point; they add up to 1. */
  readonly weights: Float64Array;
  /** Logarithm of how well the fit foresaw the holes, beside the normal stand-in used in the fit. */
  readonly logHoles: number;
  readonly straying: Straying;
}

/** What a joist strays on its own given its node: `mean = sum(gain * (value - node at v))`, and the variance. */
export interface Straying {
  /** By joist of the scatter: variance, and the observations that bear on it. */
  readonly variance: readonly number[];
  readonly readings: readonly (readonly {
    readonly value: number;
    readonly v: number;
    readonly gain: number;
    readonly variance: number;
  }[])[];
}

const LEVELS = 512;
/** Middles of equally likely slices of the standard normal distribution. */
const QUANTILES = Float64Array.from({ length: LEVELS }, (_, i) => normalPlace((i + 0.5) / LEVELS));
/** Fractional parts of the square roots of primes: steps of an even sequence in many dimensions. */
const STEPS = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59, 61, 67, 71, 73, 79, 83, 89].map(
  (prime) => Math.sqrt(prime) - Math.floor(Math.sqrt(prime)),
);

/** Numbers of the joists that may be in the room, counted from the system's origin. */
export function joistsInRoom(fit: Fit, sight: Sight): { first: number; last: number } {
  const length = sight.far - sight.near;
  const at = nodeMeansOf(fit);
  const [zero, one] = [at(0), at(1)];
  const spacing = Math.max(50, one - zero);
  let first = -Math.min(200, Math.floor(zero / spacing));
  let last = Math.min(200, Math.floor((length - zero) / spacing));
  while (first > -200 && at(first - 1) >= 0) first -= 1;
  while (first < 0 && at(first) < 0) first += 1;
  while (last < 200 && at(last + 1) <= length) last += 1;
  while (last > 0 && at(last) > length) last -= 1;
  return { first, last };
}

/** Spreads `points` over what the fit allows, and weighs each by the holes that met nothing or met timber anywhere. */
export function scatterOf(fit: Fit, sight: Sight, placing: Placing, points: number): Scatter {
  const { first: inner, last: outer } = joistsInRoom(fit, sight);
  // One joist beyond each wall: a hole beside the wall may speak of it.
  const first = inner - 1;
  const joists = outer - first + 2;
  const sloped = fit.setting.skew > 0;
  const targets: Target[] = Array.from({ length: joists }, (_, j) => ({ of: 'node', joist: first + j, v: 0 }));
  if (sloped) targets.push({ of: 'skew', joist: 0, v: 0 }, { of: 'fan', joist: 0, v: 0 });
  const { means, covariance } = predict(fit, targets);
  const columns = pivotedFactor(targets.length, covariance);
  const nodes = new Float64Array(points * joists);
  const skew = new Float64Array(points);
  const fan = new Float64Array(points);
  const row = new Float64Array(targets.length);
  for (let p = 0; p < points; p++) {
    row.set(means);
    columns.forEach((column, dimension) => {
      const step = dimension === 0 ? (p + 0.5) / points : (p + 0.5) * STEPS[(dimension - 1) % STEPS.length];
      const z = QUANTILES[Math.floor((step - Math.floor(step)) * LEVELS)];
      for (let i = 0; i < row.length; i++) row[i] += column[i] * z;
    });
    for (let j = 0; j < joists; j++) nodes[p * joists + j] = row[j];
    if (sloped) {
      skew[p] = row[joists];
      fan[p] = row[joists + 1];
    }
  }
  const straying = strayingOf(fit, first, joists);
  const bare = { first, joists, points, nodes, skew, fan, straying };
  return { ...bare, ...weighHoles(bare, fit, sight, placing) };
}

/** Columns of a factor of a covariance, the widest first, as many as matter. */
function pivotedFactor(size: number, covariance: (i: number, j: number) => number): Float64Array[] {
  const columns: Float64Array[] = [];
  const left = Float64Array.from({ length: size }, (_, i) => Math.max(0, covariance(i, i)));
  const enough = 1e-4;
  while (columns.length < size) {
    let pivot = 0;
    for (let i = 1; i < size; i++) if (left[i] > left[pivot] * 1.000001) pivot = i;
    if (left[pivot] < enough) break;
    const root = Math.sqrt(left[pivot]);
    const column = new Float64Array(size);
    for (let i = 0; i < size; i++) {
      let c = covariance(i, pivot);
      for (const before of columns) c -= before[i] * before[pivot];
      column[i] = c / root;
      left[i] = Math.max(0, left[i] - column[i] * column[i]);
    }
    left[pivot] = 0;
    columns.push(column);
  }
  return columns;
}

function strayingOf(fit: Fit, first: number, joists: number): Straying {
  const { system, setting } = fit;
  const own = setting.straying * setting.straying;
  const found: { value: number; v: number; gain: number; variance: number }[][] = Array.from({ length: joists }, () => []);
  for (let i = 0; i < system.count; i++) {
    const j = system.joist[i] - first;
    if (j < 0 || j >= joists) continue;
    const off = system.off[i];
    const variance = system.variance[i] + off * off * system.widthSd * system.widthSd;
    found[j].push({ value: system.value[i], v: system.v[i], gain: 0, variance });
  }
  const variance = found.map((each) => (own === 0 ? 0 : 1 / each.reduce((sum, one) => sum + 1 / one.variance, 1 / own)));
  const readings = found.map((each, j) => each.map((one) => ({ ...one, gain: variance[j] / one.variance })));
  return { variance, readings };
}

type Bare = Omit<Scatter, 'weights' | 'logHoles'>;

/** What joist `j` of a point is expected to stray, mm. */
export function strayOf(scatter: Bare, p: number, j: number): number {
  let stray = 0;
  const slope = scatter.skew[p] + scatter.fan[p] * (scatter.first + j);
  const node = scatter.nodes[p * scatter.joists + j];
  for (const { value, v, gain } of scatter.straying.readings[j]) stray += gain * (value - node - v * slope);
  return stray;
}

/** The joist of a point whose centre is nearest to a place at `v`. */
export function nearestJoist(scatter: Bare, p: number, u: number, v: number): number {
  const { joists, nodes, skew, fan, first } = scatter;
  let best = 0;
  let least = Infinity;
  for (let j = 0; j < joists; j++) {
    const away = Math.abs(nodes[p * joists + j] + v * (skew[p] + fan[p] * (first + j)) - u);
    if (away < least) {
      least = away;
      best = j;
    }
  }
  return best;
}

/** Share of holes at distance `away` from a joist's expected centre that are within its width, averaged over what the width may be. */
export function metTimber(away: number, sd: number, width: number, widthSd: number): number {
  const at = (w: number): number => normalBelowQuick((w / 2 - away) / sd) + normalBelowQuick((w / 2 + away) / sd) - 1;
  if (widthSd < 2) return at(width);
  // Three points of Gauss and Hermite, good for any smooth function of a normal width.
  const off = 1.7320508075688772 * widthSd;
  return (4 * at(width) + at(width - off) + at(width + off)) / 6;
}

function weighHoles(bare: Bare, fit: Fit, sight: Sight, placing: Placing): { weights: Float64Array; logHoles: number } {
  const { points } = bare;
  const weights = new Float64Array(points).fill(1 / points);
  const holes = sight.readings.filter((reading, index) => reading.anywhere && placing.places[index] !== null);
  if (sight.misses.length === 0 && holes.length === 0) return { weights, logHoles: 0 };
  const logs = new Float64Array(points);
  let best = -Infinity;
  for (let p = 0; p < points; p++) {
    logs[p] = logOfMisses(bare, fit, sight, p) + logOfHits(bare, fit, sight, holes, p);
    if (logs[p] > best) best = logs[p];
  }
  let sum = 0;
  for (let p = 0; p < points; p++) sum += weights[p] = exponential(logs[p] - best);
  for (let p = 0; p < points; p++) weights[p] /= sum;
  return { weights, logHoles: best + logarithm(sum / points) };
}

/** Holes that met nothing: each joist near one is there and was missed, or is not there. */
function logOfMisses(bare: Bare, fit: Fit, sight: Sight, p: number): number {
  const { width, widthSd, assumptions } = fit.system;
  const { falseMiss, falseHit, missing, wander } = assumptions;
  const seen = new Map<number, number>();
  for (const { u, v } of sight.misses) {
    const at = u - sight.near;
    const j = nearestJoist(bare, p, at, v);
    const centre = bare.nodes[p * bare.joists + j] + v * (bare.skew[p] + bare.fan[p] * (bare.first + j));
    const away = Math.abs(centre + strayOf(bare, p, j) - at);
    const sd = Math.sqrt(bare.straying.variance[j] + wander * wander);
    if (away > width + 5 * sd) continue;
    const miss = 1 - falseHit - (1 - falseMiss - falseHit) * metTimber(away, sd, width, widthSd);
    seen.set(j, (seen.get(j) ?? 1) * miss);
  }
  let log = 0;
  for (const [j, miss] of seen) {
    const absent = bare.straying.readings[j].length > 0 ? 0 : missing;
    log += logarithm((1 - absent) * miss + absent);
  }
  return log;
}

/** Holes that met timber anywhere: the true window in place of the normal stand-in that the fit used. */
function logOfHits(bare: Bare, fit: Fit, sight: Sight, holes: readonly Sight['readings'][number][], p: number): number {
  const { width, widthSd, assumptions } = fit.system;
  const own = fit.setting.straying * fit.setting.straying;
  let log = 0;
  for (const { u, v, variance } of holes) {
    const at = u - sight.near;
    const j = nearestJoist(bare, p, at, v);
    const slope = bare.skew[p] + bare.fan[p] * (bare.first + j);
    const node = bare.nodes[p * bare.joists + j];
    // What the other readings of this joist say of its straying.
    let precision = own === 0 ? Infinity : 1 / own;
    let pull = 0;
    let left = false;
    for (const other of bare.straying.readings[j]) {
      if (!left && other.v === v && other.value === at && Math.abs(other.variance - variance) < 1e-9) {
        left = true;
        continue;
      }
      precision += 1 / other.variance;
      pull += (other.value - node - other.v * slope) / other.variance;
    }
    const stray = own === 0 ? 0 : 1 / precision;
    const away = node + v * slope + stray * pull - at;
    const sd = Math.sqrt(stray + assumptions.wander * assumptions.wander);
    const window = metTimber(Math.abs(away), sd, width, widthSd) / width;
    const total = stray + variance;
    log += logarithm(Math.max(window, 1e-12)) + (1.8378770664093453 + logarithm(total) + (away * away) / total) / 2;
  }
  return log;
}
