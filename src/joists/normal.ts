/**
 * The share of a normal distribution with this mean and standard deviation that lies within `limit` of zero, rounded to six
 * decimals so that it is the same on every engine. With no spread it is 1 or 0, the limit itself counting as within.
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
  const density = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
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
