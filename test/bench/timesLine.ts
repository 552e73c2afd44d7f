import { quantile } from './quantile.js';

/** How times in ms spread, in one line. */
export const timesLine = (name: string, times: readonly number[]): string =>
  `${name}, ms: median ${quantile(times, 0.5).toFixed(2)}, 95 % ${quantile(times, 0.95).toFixed(2)}, 99 % ${quantile(times, 0.99).toFixed(2)}, greatest ${quantile(times, 1).toFixed(1)}`;
