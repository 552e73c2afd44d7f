import { normalPlace } from './normal.js';

const LEVELS = 512;
/** Middles of equally likely slices of the standard normal distribution. */
const QUANTILES = Float64Array.from({ length: LEVELS }, (_, i) => normalPlace((i + 0.5) / LEVELS));
/** Fractional parts of the square roots of primes: steps of an even sequence in many dimensions. */
const STEPS = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59, 61, 67, 71, 73, 79, 83, 89].map(
  (prime) => Math.sqrt(prime) - Math.floor(Math.sqrt(prime)),
);

/**
 * One coordinate of one point of an evenly spread set of standard normal points. It is the same on every engine: nothing random
 * draws it.
 */
export function normalSpread(point: number, points: number, dimension: number): number {
  const step = dimension === 0 ? (point + 0.5) / points : (point + 0.5) * STEPS[(dimension - 1) % STEPS.length];
  return QUANTILES[Math.floor((step - Math.floor(step)) * LEVELS)];
}
