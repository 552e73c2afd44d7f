import { type Fit, sharedBays, variancesOf } from './fit.js';

/** Means of the nodes of joists (each joist's centre less its own straying) at mid-length, mm from the near wall. */
export function nodeMeansOf(fit: Fit): (joist: number) => number {
  const { system, factor, rest, place } = fit;
  const { count, joist, v } = system;
  const { drift, spacing } = variancesOf(system, fit.setting);
  // The readings' covariance, solved for what they leave: one multiplication a reading is then enough for any mean.
  const pull = Float64Array.from(rest);
  for (let i = count - 1; i >= 0; i--) {
    const row = (i * (i + 1)) / 2;
    pull[i] /= factor[row + i];
    for (let j = 0; j < i; j++) pull[j] -= factor[row + j] * pull[i];
  }
  return (k) => {
    let mean = place + system.spacing * k;
    for (let i = 0; i < v.length; i++) mean += pull[i] * (drift * sharedBays(k, joist[i]) + spacing * k * joist[i]);
    return mean;
  };
}
