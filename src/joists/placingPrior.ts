import { logarithm } from './exponential.js';
import type { Fit } from './fit.js';
import { nodeMeansOf } from './nodeMeans.js';
import type { Placing } from './placing.js';
import type { Sight } from './readings.js';

/**
 * Probability of a placing before the readings' values, as a logarithm: of the family, of which readings are of joists at all, and
 * of which joists they are. Every joist in the room is as likely to be marked as any other: that is what weighs half and twice a
 * spacing, which fit the places as well.
 */
export function logPrior(sight: Sight, placing: Placing, fit: Fit): number {
  const { doubled } = fit.system.assumptions;
  const length = Math.max(1, sight.far - sight.near);
  const nodeAt = nodeMeansOf(fit);
  const first = nodeAt(0);
  // Over all bays that were read: one bay alone may stray far where joists are irregular.
  const last = fit.system.joist.reduce((greatest, joist) => Math.max(greatest, joist), 1);
  const spacing = Math.max(1, (nodeAt(last) - first) / last);
  const joists = Math.max(1, Math.floor((length - first) / spacing) + Math.floor(first / spacing) + 1);
  // The place of the row of joists is even over one spacing.
  // Nothing to weigh where none is doubled, also when doubling is taken as impossible.
  const ofDoubled = placing.doubled.length === 0 ? 0 : placing.doubled.length * logarithm(doubled);
  const ofRow = logarithm(placing.family.prior) - logarithm(spacing) + ofDoubled;
  return ofRow + logOfChoices(sight, placing, fit, joists, length);
}

/** The logarithm of the probability that these readings are of something else and those of just these joists. */
function logOfChoices(sight: Sight, { places }: Placing, { system }: Fit, joists: number, length: number): number {
  const { spurious, repeated, falseHit, falseMiss } = system.assumptions;
  const marked = new Set<number>();
  let log = 0;
  // Factors are gathered and their logarithm taken now and then.
  let product = 1;
  places.forEach((place, index) => {
    const { anywhere } = sight.readings[index];
    if (place === null) product *= anywhere ? falseHit : spurious / length;
    else if (anywhere) product *= (1 - falseMiss - falseHit) * system.width;
    else if (marked.has(place.joist)) product *= ((1 - spurious) * repeated) / marked.size;
    else {
      product *= (1 - spurious) * (marked.size === 0 ? 1 / joists : (1 - repeated) / Math.max(1, joists - marked.size));
      marked.add(place.joist);
    }
    if (product < 1e-200) {
      log += logarithm(product);
      product = 1;
    }
  });
  return log + logarithm(product);
}
