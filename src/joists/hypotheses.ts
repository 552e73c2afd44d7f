import type { Assumptions } from './assumptions.js';
import { exponential, logarithm } from './exponential.js';
import { type Fit, fitOf, predict } from './fit.js';
import type { Sight } from './readings.js';
import type { Placing } from './searchPlacings.js';
import { type Setting, type System, systemOf } from './system.js';

/** A placing under one setting, with the logarithm of its weight beside all others. */
export interface Weighed {
  readonly sight: Sight;
  readonly placing: Placing;
  readonly fit: Fit;
  readonly logWeight: number;
}

/** Settings tried first, to drop what is hopeless before the rest are tried. */
const FIRST_LOOK = { straying: 5, drift: 1 };
/** How far behind the best something may be to be kept, as a logarithm. */
const BEHIND = 9;

/** Every placing under every setting that is not far behind the best. */
export function weighPlacings(
  sight: Sight,
  placings: readonly Placing[],
  width: number,
  widthSd: number,
  assumptions: Assumptions,
): Weighed[] {
  const lies = liesOf(sight, assumptions);
  const looked: { system: System; placing: Placing; prior: number; lie: Lie; look: number }[] = [];
  for (const placing of placings) {
    if (placing.places.every((place) => place === null)) continue;
    const system = systemOf(sight, placing, width, widthSd, assumptions);
    let prior = 0;
    lies.forEach((lie, index) => {
      const { drift } = placing.family;
      const fit = fitOf(system, {
        straying: FIRST_LOOK.straying,
        drift: placing.family.kind === 'irregular' ? drift[drift.length - 1] : FIRST_LOOK.drift,
        skew: lie.skew,
        fan: lie.fan,
      });
      if (index === 0) prior = logPrior(sight, placing, fit, assumptions);
      looked.push({ system, placing, prior, lie, look: prior + lie.logPrior + fit.logDensity });
    });
  }
  const best = looked.reduce((greatest, { look }) => Math.max(greatest, look), -Infinity);
  const weighed: Weighed[] = [];
  for (const { system, placing, prior, lie, look } of looked) {
    if (look < best - BEHIND) continue;
    const { straying, drift } = placing.family;
    const share = -logarithm(straying.length * drift.length);
    for (const own of straying) {
      for (const bay of drift) {
        const setting: Setting = { straying: own, drift: bay, skew: lie.skew, fan: lie.fan };
        const fit = fitOf(system, setting);
        weighed.push({ sight, placing, fit, logWeight: prior + lie.logPrior + share + fit.logDensity });
      }
    }
  }
  return weighed;
}

interface Lie {
  readonly skew: number;
  readonly fan: number;
  readonly logPrior: number;
}

/** Straight, askew, or fanned: only where there are readings on several lines to tell them apart. */
function liesOf(sight: Sight, { skew, skewAskew, fan, askew, fanned }: Assumptions): Lie[] {
  const along = sight.readings.map(({ v }) => v);
  if (along.length < 2 || Math.max(...along) - Math.min(...along) < 0.3) return [{ skew, fan: 0, logPrior: 0 }];
  return [
    { skew, fan: 0, logPrior: logarithm(1 - askew - fanned) },
    { skew: skewAskew, fan: 0, logPrior: logarithm(askew) },
    { skew: skewAskew, fan, logPrior: logarithm(fanned) },
  ];
}

/**
 * Probability of a placing before the readings' values: of the family, of which readings are of joists at all, and of which
 * joists they are. Every joist in the room is as likely to be marked as any other: that is what weighs half and twice a
 * spacing, which fit the places as well.
 */
function logPrior(sight: Sight, placing: Placing, fit: Fit, assumptions: Assumptions): number {
  const { spurious, repeated, doubled, falseHit, falseMiss } = assumptions;
  const length = Math.max(1, sight.far - sight.near);
  const [first, second] = predict(fit, [
    { of: 'node', joist: 0, v: 0 },
    { of: 'node', joist: 1, v: 0 },
  ]).means;
  const spacing = Math.max(1, second - first);
  const joists = Math.max(1, Math.floor((length - first) / spacing) + Math.floor(first / spacing) + 1);
  let log = logarithm(placing.family.prior) - logarithm(spacing) + placing.doubled.length * logarithm(doubled);
  const marked = new Set<number>();
  placing.places.forEach((place, index) => {
    const { anywhere } = sight.readings[index];
    if (place === null) {
      log += logarithm(anywhere ? falseHit : spurious / length);
    } else if (anywhere) {
      log += logarithm((1 - falseMiss - falseHit) * fit.system.width);
    } else if (marked.has(place.joist)) {
      log += logarithm(((1 - spurious) * repeated) / marked.size);
    } else {
      const choice = marked.size === 0 ? 1 / joists : (1 - repeated) / Math.max(1, joists - marked.size);
      log += logarithm((1 - spurious) * choice);
      marked.add(place.joist);
    }
  });
  return log;
}

/** Weights that add up to 1, from their logarithms. */
export function normalised(logWeights: readonly number[]): number[] {
  const best = logWeights.reduce((greatest, each) => Math.max(greatest, each), -Infinity);
  const weights = logWeights.map((each) => exponential(each - best));
  const sum = weights.reduce((total, each) => total + each, 0);
  return weights.map((each) => each / sum);
}
