import { fromGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import { centreAt, frameOf } from './frame.js';
import type { Inference } from './inferJoists.js';
import { frameExtent } from './joistLine.js';
import { type Outcomes, outcomesOf } from './outcomes.js';
import { type Cases, massOf, probeGain, weightsAfter } from './probeGain.js';
import type { Site } from './probeSites.js';

/** A hole that tells where the joists stand, and what it is expected to tell. */
export interface SpacingProbe {
  readonly site: Site;
  /** bits. */
  readonly gain: number;
  /** Probability that it meets timber. */
  readonly timber: number;
  /** Probability that all anchors are where they are believed, now and on average after the hole. */
  readonly now: number;
  readonly after: number;
  /** The two likeliest spacings where the hole tells them apart, mm: the one with a joist here and the one without. */
  readonly apart: { readonly joist: number; readonly none: number } | null;
}

/**
 * How near to its believed place a joist must be for a line of screws to meet it, mm: half of the narrowest usual joist, 38, less the
 * 6 mm that a screw keeps from its edge, and a little.
 */
export const NEAR = 12;
/** Sites that are looked at one step further. */
const LOOKED_AT = 5;
/** Of the sites one step on, every so-manieth is looked at. */
const COARSE = 3;
/** A hole that tells less than this is not worth drilling, bits. */
const LEAST_GAIN = 0.02;

/** The most telling hole for the places of these joists; `known`: they are known well enough; `null`: no hole tells more. */
export function probeSpacing(
  inference: Inference,
  joists: readonly Joist[],
  sites: readonly Site[],
  certainty: number,
): SpacingProbe | 'known' | null {
  const anchors = joists.map((joist) => placeOf(inference, joist));
  const outcomes = outcomesOf(inference, sites, anchors);
  const now = settled(outcomes, outcomes.weights);
  if (now >= certainty) return 'known';
  const cases = casesOf(outcomes);
  const { weights } = outcomes;
  const met = new Float64Array(cases.count);
  const mass = massOf(weights, cases);
  const gains = sites.map((_, site) => ({ site, ...probeGain(outcomes, site, weights, cases, mass, met) }));
  const best = farApart(gains, sites);
  if (best.length === 0) return null;
  const looked = best.map((each) => {
    let [value, after] = [each.gain, 0];
    for (const timber of [true, false]) {
      const chance = timber ? each.timber : 1 - each.timber;
      if (chance < 1e-6) continue;
      const left = weightsAfter(outcomes, each.site, weights, timber);
      const likely = massOf(left, cases);
      after += chance * settled(outcomes, left, cases, likely);
      let next = 0;
      for (let site = 0; site < sites.length; site += COARSE) {
        next = Math.max(next, probeGain(outcomes, site, left, cases, likely, met).gain);
      }
      value += chance * next;
    }
    return { ...each, value, after };
  });
  const chosen = looked.reduce((one, other) => (other.value > one.value + 1e-9 ? other : one));
  const { site, gain, timber } = chosen;
  return { site: sites[site], gain, timber, now, after: Math.max(now, chosen.after), apart: toldApart(outcomes, site) };
}

/** A spacing this likely is worth telling from the other. */
const IN_QUESTION = 0.1;
/** How differently likely timber must be under two spacings for a hole to tell them apart. */
const APART = 0.4;

function toldApart({ weights, spacing, starts, points, excess }: Outcomes, site: number): SpacingProbe['apart'] {
  const chances = new Map<number, { weight: number; timber: number }>();
  weights.forEach((weight, point) => {
    const each = chances.get(spacing[point]) ?? { weight: 0, timber: 0 };
    chances.set(spacing[point], each);
    each.weight += weight;
  });
  for (let i = starts[site]; i < starts[site + 1]; i++) {
    (chances.get(spacing[points[i]]) as { timber: number }).timber += weights[points[i]] * excess[i];
  }
  const [one, other] = [...chances].sort(([a, first], [b, second]) => second.weight - first.weight || a - b);
  if (other === undefined || one[0] === 0 || other[0] === 0 || other[1].weight < IN_QUESTION) return null;
  const difference = one[1].timber / one[1].weight - other[1].timber / other[1].weight;
  if (Math.abs(difference) < APART) return null;
  return difference > 0 ? { joist: one[0], none: other[0] } : { joist: other[0], none: one[0] };
}

/** Where a joist's centre is at mid-length of the room, plan coordinate in mm. */
function placeOf({ room, direction }: Inference, joist: Joist): number {
  const { low, high } = frameExtent(room, direction);
  return fromGrid(centreAt(joist, frameOf(direction), Math.round((low + high) / 2)));
}

/** The sites with the greatest gains, no two of them beside each other. */
function farApart<T extends { site: number; gain: number }>(gains: readonly T[], sites: readonly Site[]): T[] {
  const ordered = gains.filter(({ gain }) => gain >= LEAST_GAIN).sort((a, b) => b.gain - a.gain || a.site - b.site);
  const kept: T[] = [];
  for (const each of ordered) {
    if (kept.length === LOOKED_AT) break;
    const { u, v } = sites[each.site];
    if (kept.every(({ site }) => sites[site].v !== v || Math.abs(sites[site].u - u) > 15)) kept.push(each);
  }
  return kept;
}

/** Probability that every anchor is near one place: where it is believed, or, where that has moved, the middle of the likeliest case. */
function settled({ away, anchors }: Outcomes, weights: Float64Array, cases?: Cases, mass?: Float64Array): number {
  const middle = new Float64Array(anchors);
  if (cases && mass) {
    const likeliest = mass.indexOf(Math.max(...mass));
    weights.forEach((weight, p) => {
      if (cases.of[p] !== likeliest) return;
      for (let a = 0; a < anchors; a++) middle[a] += (weight / mass[likeliest]) * away[p * anchors + a];
    });
  }
  let sure = 0;
  weights.forEach((weight, p) => {
    for (let i = p * anchors, a = 0; a < anchors; i++, a++) if (Math.abs(away[i] - middle[a]) > NEAR) return;
    sure += weight;
  });
  return sure;
}

/** Points with their anchors in the same places, to within what a screw allows, are one case. */
function casesOf({ away, anchors, weights }: Outcomes): Cases {
  const of = new Int32Array(weights.length);
  const numbers = new Map<string, number>();
  for (let p = 0; p < of.length; p++) {
    let key = '';
    for (let a = 0; a < anchors; a++) key += `${Math.round(away[p * anchors + a] / NEAR)} `;
    const number = numbers.get(key) ?? numbers.size;
    numbers.set(key, number);
    of[p] = number;
  }
  return { of, count: numbers.size };
}
