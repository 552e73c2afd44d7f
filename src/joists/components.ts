import type { Assumptions } from './assumptions.js';
import { logarithm } from './exponential.js';
import { familiesOf } from './families.js';
import { evidenceOfHoles, type HoleEvidence } from './holeEvidence.js';
import { normalised, type Weighed, weighPlacings } from './hypotheses.js';
import type { Sight } from './readings.js';
import type { Scatter } from './scatterPoint.js';
import { searchPlacings } from './searchPlacings.js';

/** One Gaussian piece of the posterior: a placing under one setting, its probability, and the scatter that the holes weigh. */
export interface Component {
  readonly weighed: Weighed;
  readonly probability: number;
  /** What holes say beside the fit: misses, and hits that were not centred; nothing where no hole is near a joist. */
  readonly holes?: HoleEvidence;
  /** A sample of all that is left open, where one was asked for. */
  readonly scatter?: Scatter;
}

/** Components kept beside the most probable one. */
const KEPT = 72;
/** Share of the probability that the kept components must make up before the rest is dropped. */
const ENOUGH = 0.97;
/** Points shared among the components while holes are weighed, and the fewest that one gets. */
const POINTS = 300;
const LEAST_POINTS = 24;

/** The posterior over all sights as a mixture, the most probable first. */
export function componentsOf(
  sights: readonly { readonly sight: Sight; readonly prior: number }[],
  width: number,
  widthSd: number,
  assumptions: Assumptions,
): Component[] {
  const families = familiesOf(assumptions);
  const weighed = sights.flatMap(({ sight, prior }) => {
    const placings = searchPlacings(sight, families, width, assumptions);
    const log = logarithm(prior) + logOfLines(sight);
    return weighPlacings(sight, placings, width, widthSd, assumptions).map((each) => ({
      ...each,
      logWeight: each.logWeight + log,
    }));
  });
  const kept = mostProbable(weighed);
  const holes = sights.some(({ sight }) => sight.misses.length > 0 || sight.readings.some(({ anywhere }) => anywhere));
  if (!holes) return kept.map(({ weighed: each, probability }) => ({ weighed: each, probability }));
  const evidence = kept.map(({ weighed: each, probability }) =>
    evidenceOfHoles(each.fit, each.sight, each.placing, Math.max(LEAST_POINTS, Math.ceil(POINTS * probability))),
  );
  const after = normalised(kept.map(({ probability }, i) => logarithm(probability) + evidence[i].logHoles));
  return kept
    .map(({ weighed: each }, i) => ({ weighed: each, probability: after[i], holes: evidence[i] }))
    .map((component, index) => ({ component, index }))
    .sort((a, b) => b.component.probability - a.component.probability || a.index - b.index)
    .map(({ component }) => component);
}

/** The most probable ones; what is left of each family stands for all of it. */
function mostProbable(weighed: readonly Weighed[]): { weighed: Weighed; probability: number }[] {
  const probabilities = normalised(weighed.map(({ logWeight }) => logWeight));
  const order = weighed.map((_, index) => index).sort((a, b) => probabilities[b] - probabilities[a] || a - b);
  const kept: number[] = [];
  let sum = 0;
  for (const index of order) {
    if (kept.length === KEPT || sum > ENOUGH) break;
    kept.push(index);
    sum += probabilities[index];
  }
  const familyOf = (index: number): string => {
    const { placing, sight } = weighed[index];
    return `${sight.direction} ${placing.family.kind} ${placing.family.spacing}`;
  };
  const whole = shareByKey(order, familyOf, probabilities);
  const part = shareByKey(kept, familyOf, probabilities);
  const scaled = kept.map(
    (index) => (probabilities[index] * (whole.get(familyOf(index)) ?? 0)) / (part.get(familyOf(index)) ?? 1),
  );
  const total = scaled.reduce((all, each) => all + each, 0);
  return kept.map((index, i) => ({ weighed: weighed[index], probability: scaled[i] / total }));
}

function shareByKey(
  indices: readonly number[],
  keyOf: (index: number) => string,
  shares: readonly number[],
): Map<string, number> {
  const sums = new Map<string, number>();
  for (const index of indices) sums.set(keyOf(index), (sums.get(keyOf(index)) ?? 0) + shares[index]);
  return sums;
}

/** People mark along lines: a reading on a line that has been used before is no surprise. */
function logOfLines({ readings, low, high }: Sight): number {
  const within = 0.02;
  const lines: number[] = [];
  let log = 0;
  for (const { v } of readings.slice().sort((a, b) => a.mark - b.mark)) {
    const elsewhere = 1 / Math.max(0.2, high - low);
    const known = lines.some((line) => Math.abs(line - v) <= within);
    if (lines.length === 0) log += logarithm(elsewhere);
    else log += logarithm(known ? 0.7 / lines.length / (2 * within) : 0.3 * elsewhere);
    if (!known) lines.push(v);
  }
  // Per m along, as the readings' density is per mm across.
  return log - readings.length * logarithm(1000);
}
