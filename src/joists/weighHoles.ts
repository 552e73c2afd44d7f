import { exponential, logarithm } from './exponential.js';
import { type Fit, ownOf, variancesOf } from './fit.js';
import { metTimber } from './metTimber.js';
import type { Placing } from './placing.js';
import type { Sight } from './readings.js';
import { type Bare, nearestJoist, strayOf } from './scatterPoint.js';

/** Weights of a scatter's points by the holes, and the logarithm of how well the scatter foresaw them. */
export function weighHoles(bare: Bare, fit: Fit, sight: Sight, placing: Placing): { weights: Float64Array; logHoles: number } {
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
  const variances = variancesOf(fit.system, fit.setting);
  let log = 0;
  for (const { u, v, variance } of holes) {
    const at = u - sight.near;
    const j = nearestJoist(bare, p, at, v);
    const own = ownOf(bare.first + j, variances);
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
