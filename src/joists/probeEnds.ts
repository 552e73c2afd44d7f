import type { Joist } from '../survey/joist.js';
import { afterEdges, certaintyOn, type EndsOutlook } from './endsOutlook.js';
import { logarithm } from './exponential.js';
import { normalBelowQuick } from './normal.js';
import type { Site } from './probeSites.js';

/** A joist whose two edges are to be found at one place, and what that is expected to do for its butt joints. */
export interface EdgesProbe {
  readonly site: Site;
  readonly joist: Joist;
  /** What the two edges tell of the joist's centre, bits. */
  readonly gain: number;
  /** Standard deviation of the joist's centre there, now and after, mm. */
  readonly sd: number;
  readonly sdAfter: number;
  /** Probability that all the joist's own butt joints hold, now and after. */
  readonly certainty: { readonly now: number; readonly after: number };
  /** What is believed then. */
  readonly outlook: EndsOutlook;
}

/** A place that raises the butt joints' certainty by less than this, all of them added up, is not worth the hole. */
const LEAST_RISE = 0.002;
/** What a place away from the butt joint must do better than one beside it. */
const WORTH_WALKING = 0.02;

/** The joist and place whose two edges do most for the butt joints on joists that are not sure, all added up. */
export function probeEnds(outlook: EndsOutlook, unsure: ReadonlySet<string>): EdgesProbe | null {
  const { ends, places, covariance, noise, found } = outlook;
  const size = ends.length + places.length;
  const met = new Set(found.map((place) => places[place].joist.id));
  let [best, greatest] = [-1, -Infinity];
  places.forEach(({ joist, beside }, place) => {
    if (found.includes(place)) return;
    const at = ends.length + place;
    const seen = covariance[at * size + at] + noise;
    let rise = 0;
    ends.forEach((end, i) => {
      if (!unsure.has(end.joist.id)) return;
      const now = covariance[i * size + i];
      const shared = covariance[i * size + at];
      const present = met.has(end.joist.id) ? 1 : end.joist.presence;
      const after = end.joist.id === joist.id ? 1 : present;
      rise += after * within(end.limits, now - (shared * shared) / seen) - present * within(end.limits, now);
    });
    const worth = rise - (beside ? 0 : WORTH_WALKING);
    if (rise > LEAST_RISE && worth > greatest + 1e-9) [best, greatest] = [place, worth];
  });
  if (best < 0) return null;
  const { joist, site } = places[best];
  const after = afterEdges(outlook, best);
  const at = ends.length + best;
  const [variance, left] = [covariance[at * size + at], after.covariance[at * size + at]];
  return {
    site,
    joist,
    gain: logarithm(variance / left) / (2 * logarithm(2)),
    sd: Math.sqrt(variance),
    sdAfter: Math.sqrt(left),
    certainty: { now: certaintyOn(outlook, joist.id), after: certaintyOn(after, joist.id) },
    outlook: after,
  };
}

/** Probability that a centre with this variance is within its limit. */
function within(limits: EndsOutlook['ends'][number]['limits'], variance: number): number {
  const sd = Math.sqrt(Math.max(variance, 1e-6));
  let sum = 0;
  for (const { limit, share } of limits) if (limit > 0) sum += share * (2 * normalBelowQuick(limit / sd) - 1);
  return sum;
}
