import { logarithm } from './exponential.js';
import type { Outcomes } from './outcomes.js';

const KNOTS = 4096;
const ENTROPY = Float64Array.from({ length: KNOTS + 2 }, (_, i) => {
  const p = Math.min(1, i / KNOTS);
  return p === 0 || p === 1 ? 0 : -(p * logarithm(p) + (1 - p) * logarithm(1 - p)) / logarithm(2);
});

/** What a yes or a no tells, in bits, when yes has this probability. */
export function entropy(probability: number): number {
  const place = Math.min(1, Math.max(0, probability)) * KNOTS;
  const knot = Math.floor(place);
  return ENTROPY[knot] + (place - knot) * (ENTROPY[knot + 1] - ENTROPY[knot]);
}

/** The points of a sample sorted into cases: what has to be told apart. */
export interface Cases {
  /** By point. */
  readonly of: Int32Array;
  readonly count: number;
}

/** How much a hole at one site is expected to tell of the case, in bits, and the probability that it meets timber. */
export function probeGain(
  outcomes: Outcomes,
  site: number,
  weights: Float64Array,
  cases: Cases,
  mass: Float64Array,
  met: Float64Array,
): { gain: number; timber: number } {
  const { starts, points, excess, falseHit } = outcomes;
  const touched: number[] = [];
  let timber = falseHit;
  for (let i = starts[site]; i < starts[site + 1]; i++) {
    const point = points[i];
    const share = weights[point] * excess[i];
    timber += share;
    const its = cases.of[point];
    if (met[its] === 0) touched.push(its);
    met[its] += share;
  }
  let known = entropy(falseHit);
  for (const its of touched) {
    if (mass[its] > 0) known += mass[its] * (entropy(falseHit + met[its] / mass[its]) - entropy(falseHit));
    met[its] = 0;
  }
  return { gain: Math.max(0, entropy(timber) - known), timber };
}

/** Probability of each case. */
export function massOf(weights: Float64Array, cases: Cases): Float64Array {
  const mass = new Float64Array(cases.count);
  for (let p = 0; p < weights.length; p++) mass[cases.of[p]] += weights[p];
  return mass;
}

/** The weights after a hole at a site met timber, or did not. */
export function weightsAfter(outcomes: Outcomes, site: number, weights: Float64Array, timber: boolean): Float64Array {
  const { starts, points, excess, falseHit } = outcomes;
  const elsewhere = timber ? falseHit : 1 - falseHit;
  const after = weights.map((weight) => weight * elsewhere);
  for (let i = starts[site]; i < starts[site + 1]; i++) {
    after[points[i]] += weights[points[i]] * (timber ? excess[i] : -excess[i]);
  }
  let sum = 0;
  for (const weight of after) sum += weight;
  return after.map((weight) => weight / sum);
}
