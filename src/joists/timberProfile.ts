import type { Fit } from './fit.js';
import { metTimber } from './metTimber.js';
import type { Scatter } from './scatterPoint.js';

/** The profile of each joist: those that nobody marked have one in common. */
export function timberProfiles(fit: Fit, { straying: { variance, readings } }: Scatter): number[][] {
  let unmarked: number[] | undefined;
  return variance.map((each, j) => {
    if (readings[j].length > 0) return profileOf(fit, each, true);
    unmarked ??= profileOf(fit, each, false);
    return unmarked;
  });
}

/** Probability of timber above that of a false hit, at whole millimetres from where a joist's centre is expected, until it is nothing. */
function profileOf({ system }: Fit, variance: number, marked: boolean): number[] {
  const { width, widthSd, assumptions } = system;
  const { falseMiss, falseHit, missing, wander } = assumptions;
  const most = (1 - falseMiss - falseHit) * (marked ? 1 : 1 - missing);
  const sd = Math.sqrt(variance + wander * wander);
  const profile: number[] = [];
  for (let away = 0; away < 400; away++) {
    const chance = most * metTimber(away, sd, width, widthSd);
    if (chance < 1e-4) break;
    profile.push(chance);
  }
  return profile;
}
