import { greatestCommonDivisor } from './heaviestBoard.js';

/** Sums that are looked at; beyond that the whole capacity is taken, which is never too little. */
const MOST_SUMS = 1_000_000;

/** The greatest sum of any number of these sizes that is no more than `capacity`, all in grid steps. */
export function longestFill(sizes: readonly number[], capacity: number): number {
  const step = sizes.reduce(greatestCommonDivisor, 0);
  if (step === 0) return capacity;
  const most = Math.floor(capacity / step);
  if (most * sizes.length > MOST_SUMS) return capacity;
  const reached = new Uint8Array(most + 1);
  reached[0] = 1;
  for (const size of sizes) {
    const places = size / step;
    for (let sum = places; sum <= most; sum++) if (reached[sum - places] === 1) reached[sum] = 1;
    if (reached[most] === 1) break;
  }
  return reached.lastIndexOf(1) * step;
}
