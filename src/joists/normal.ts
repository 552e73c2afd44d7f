import { exponential } from './exponential.js';

/**
 * The share of a normal distribution with this mean and standard deviation that lies within `limit` of zero, rounded to six
 * decimals. With no spread it is 1 or 0, the limit itself counting as within.
 */
export function normalWithin(mean: number, sd: number, limit: number): number {
  if (limit < 0) return 0;
  if (sd === 0) return Math.abs(mean) <= limit ? 1 : 0;
  return Math.round((normalBelow((limit - mean) / sd) - normalBelow((-limit - mean) / sd)) * 1e6) / 1e6;
}

/**
 * The standard normal distribution function, by its power series near the middle and by the continued fraction of the tail
 * beyond (Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.11 and 26.2.14, from memory). Good to about 1e-12.
 */
export function normalBelow(z: number): number {
  const x = Math.abs(z);
  if (x > 38) return z > 0 ? 1 : 0;
  const density = normalDensity(x);
  let tail: number;
  if (x < 3) {
    let term = x;
    let sum = x;
    for (let n = 3; Math.abs(term) > 1e-17; n += 2) sum += term *= (x * x) / n;
    tail = 0.5 - density * sum;
  } else {
    let fraction = x;
    for (let n = 40; n > 0; n--) fraction = x + n / fraction;
    tail = density / fraction;
  }
  return z > 0 ? 1 - tail : tail;
}

const normalDensity = (z: number): number => exponential((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** Knots per unit of the table, and where the table ends. */
const KNOTS = 32;
const LAST = 8;
/** The distribution function and its slope (times the step) at the knots, from -8 to 8. */
const TABLE = knots();

function knots(): Float64Array {
  const count = 2 * LAST * KNOTS + 1;
  const table = new Float64Array(2 * count);
  for (let i = 0; i < count; i++) {
    const z = i / KNOTS - LAST;
    table[2 * i] = normalBelow(z);
    table[2 * i + 1] = normalDensity(z) / KNOTS;
  }
  return table;
}

/**
 * {@link normalBelow} by cubic interpolation in a table, good to about 2e-9: for sums over thousands of terms.
 */
export function normalBelowQuick(z: number): number {
  if (!(z > -LAST)) return 0;
  if (z >= LAST) return 1;
  const place = (z + LAST) * KNOTS;
  const knot = Math.floor(place);
  const t = place - knot;
  const at = 2 * knot;
  const [y0, m0, y1, m1] = [TABLE[at], TABLE[at + 1], TABLE[at + 2], TABLE[at + 3]];
  const rise = y1 - y0;
  return y0 + t * (m0 + t * (3 * rise - 2 * m0 - m1 + t * (m0 + m1 - 2 * rise)));
}

/**
 * The place below which this share of the standard normal distribution lies: bisection of {@link normalBelow} narrowed by
 * Newton's rule, good to about 1e-10.
 */
export function normalPlace(share: number): number {
  if (share === 0.5) return 0;
  let low = -LAST;
  let high = LAST;
  let z = 0;
  for (let step = 0; step < 60; step++) {
    const excess = normalBelow(z) - share;
    if (excess > 0) high = z;
    else low = z;
    const next = z - excess / normalDensity(z);
    const following = next > low && next < high ? next : (low + high) / 2;
    if (Math.abs(following - z) < 1e-11) return following;
    z = following;
  }
  return z;
}
