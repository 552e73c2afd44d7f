import type { RuleSet } from '../rules/ruleSet.js';
import { numberOf } from '../rules/ruleValue.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import { LEAST_TIMBER } from './bearing.js';
import { componentsFrom } from './componentsFrom.js';
import { logarithm } from './exponential.js';
import { centreAt, frameOf } from './frame.js';
import type { Inference } from './inferJoists.js';
import type { EndJoint } from './jointConfidence.js';
import { frameExtent } from './joistLine.js';
import { shiftBetween } from './joistsOfComponents.js';
import { normalBelowQuick } from './normal.js';
import { predict, type Target } from './predict.js';
import { type Reach, reachable, type Site, siteNear } from './probeSites.js';

/** A joist whose two edges are to be found at one place, and what that is expected to do for the end joints. */
export interface EdgesProbe {
  readonly site: Site;
  readonly joist: Joist;
  /** What the two edges tell of the joist's centre, bits. */
  readonly gain: number;
  /** Standard deviation of the joist's centre there, now and after, mm. */
  readonly sd: number;
  readonly sdAfter: number;
  /** Probability that the joist's own butt joints have their bearing, now and after. */
  readonly certainty: { readonly now: number; readonly after: number };
}

/** Farthest along the joist from its end joint that its edges are looked for, mm. */
const FARTHEST = 600;
/** A place that raises no end joint's certainty by this much is not worth the hole. */
const LEAST_RISE = 0.002;

/** An end joint that is not sure yet, and how much it may be off. */
interface Wanted {
  readonly end: EndJoint;
  readonly joist: Joist;
  /** How far the centre may be from where it is believed, for each width it may have. */
  readonly limits: readonly { readonly limit: number; readonly share: number }[];
}

/** The joist and place whose two edges do most for the end joints that are not sure yet. */
export function probeEnds(
  inference: Inference,
  unsure: readonly { readonly joist: Joist; readonly ends: readonly EndJoint[] }[],
  rules: RuleSet,
  reach: Reach,
): EdgesProbe | null {
  const wanted = unsure.flatMap(({ joist, ends }) => ends.map((end): Wanted => ({ end, joist, limits: limitsOf(joist, rules) })));
  const within = reachable(inference, reach);
  const places = placesOf(inference, wanted, reach, within);
  if (places.length === 0) return null;
  const belief = beliefOf(inference, [
    ...wanted.map(({ joist, end }) => ({ joist, v: end.along })),
    ...places.map(({ joist, site }) => ({ joist, v: site.v })),
  ]);
  const noise = noiseOf(inference);
  let best: EdgesProbe | null = null;
  let greatest = LEAST_RISE;
  places.forEach(({ site, joist }, index) => {
    const place = wanted.length + index;
    const seen = belief(place, place) + noise;
    let rise = 0;
    const own = { now: 1, after: 1 };
    wanted.forEach(({ joist: its, limits }, i) => {
      const now = belief(i, i);
      const shared = belief(i, place);
      const after = Math.max(0, now - (shared * shared) / seen);
      const presence = its.id === joist.id ? 1 : its.presence;
      const [before, then] = [its.presence * certaintyAt(limits, now), presence * certaintyAt(limits, after)];
      rise += then - before;
      if (its.id === joist.id) {
        own.now = Math.min(own.now, before);
        own.after = Math.min(own.after, then);
      }
    });
    if (rise <= greatest + 1e-9) return;
    greatest = rise;
    const variance = belief(place, place);
    const after = (variance * noise) / seen;
    best = { site, joist, gain: bits(variance / after), sd: Math.sqrt(variance), sdAfter: Math.sqrt(after), certainty: own };
  });
  return best;
}

const bits = (ratio: number): number => logarithm(ratio) / (2 * Math.LN2);

/** Variance of a centre read from its two edges, mm2. */
const noiseOf = ({ assumptions: { spread } }: Inference): number =>
  (spread['near-edge'] * spread['near-edge'] + spread['far-edge'] * spread['far-edge']) / 4;

/** On timber too narrow for the edge rules the ends are to be on timber at all. */
function limitsOf({ width, widthSd = 0 }: Joist, rules: RuleSet): Wanted['limits'] {
  const gap = numberOf(rules, 'joint.gap');
  const edges = numberOf(rules, 'fixing.cutEdgeDistance') + numberOf(rules, 'fixing.timberEdgeDistance');
  const needed = (width - gap) / 2 > edges ? edges : LEAST_TIMBER;
  const off = 1.7320508075688772 * widthSd;
  const each = [
    { width, share: 2 / 3 },
    { width: width - off, share: 1 / 6 },
    { width: width + off, share: 1 / 6 },
  ];
  return each.map((one) => ({ limit: (one.width - gap) / 2 - needed, share: one.share }));
}

function certaintyAt(limits: Wanted['limits'], variance: number): number {
  const sd = Math.sqrt(variance);
  let sum = 0;
  for (const { limit, share } of limits) {
    if (limit >= 0) sum += share * (sd === 0 ? 1 : 2 * normalBelowQuick(limit / sd) - 1);
  }
  return sum;
}

/** For each end joint the place nearest to it on its joist where a hole can be put, and for each joist the places of the other rows. */
function placesOf(
  inference: Inference,
  wanted: readonly Wanted[],
  reach: Reach,
  within: (site: Site) => boolean,
): { site: Site; joist: Joist }[] {
  const frame = frameOf(inference.direction);
  const places: { site: Site; joist: Joist }[] = [];
  for (const { joist, end } of wanted) {
    const at = (v: number): number => fromGrid(centreAt(joist, frame, toGrid(v)));
    const site = siteNear(inference, reach, within, at, end.along, FARTHEST);
    if (site && !places.some((each) => each.joist === joist && each.site.v === site.v)) places.push({ site, joist });
  }
  return places;
}

/**
 * Covariances of the centres of joists at places along them, over all components that count the joists alike: one normal
 * distribution with the moments of the mixture.
 */
function beliefOf(
  inference: Inference,
  places: readonly { readonly joist: Joist; readonly v: number }[],
): (i: number, j: number) => number {
  const { room, direction, joists } = inference;
  const { low, high, near } = frameExtent(room, direction);
  const middle = fromGrid(low + high) / 2;
  const frame = frameOf(direction);
  const components = componentsFrom(inference);
  const [leader] = components;
  const total: number[] = new Array(places.length).fill(0);
  const square: number[] = new Array(places.length * places.length).fill(0);
  let weight = 0;
  // The joists are those of the leading component, in its order.
  const anchor = joists[0];
  const at = fromGrid(centreAt(anchor, frame, Math.round((low + high) / 2))) - fromGrid(near);
  const nodeOf = (joist: number): number => predict(leader.weighed.fit, [{ of: 'node', joist, v: 0 }]).means[0];
  const spacing = nodeOf(1) - nodeOf(0);
  const first = Math.round((at - nodeOf(0)) / spacing);
  for (const component of components) {
    const shift = shiftBetween(leader, component);
    if (shift === undefined) continue;
    const { fit } = component.weighed;
    const ahead = shift + leader.weighed.fit.system.origin - fit.system.origin;
    const targets = places.map(
      ({ joist, v }): Target => ({
        of: 'centre',
        joist: first + joists.findIndex(({ id }) => id === joist.id) + ahead,
        v: (v - middle) / 1000,
      }),
    );
    const { means, covariance } = predict(fit, targets);
    weight += component.probability;
    means.forEach((mean, i) => {
      total[i] += component.probability * mean;
      means.forEach((other, j) => {
        square[i * places.length + j] += component.probability * (covariance(i, j) + mean * other);
      });
    });
  }
  return (i, j) => square[i * places.length + j] / weight - (total[i] / weight) * (total[j] / weight);
}
