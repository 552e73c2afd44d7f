import type { RuleSet } from '../rules/ruleSet.js';
import { numberOf } from '../rules/ruleValue.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import { LEAST_TIMBER } from './bearing.js';
import type { JoistWithEnds } from './endJoints.js';
import { centreAt, frameOf } from './frame.js';
import type { Inference } from './inferJoists.js';
import { jointBelief } from './jointBelief.js';
import { frameExtent } from './joistLine.js';
import { normalSpread } from './normalSpread.js';
import { pivotedFactor } from './pivotedFactor.js';
import { type Reach, reachable, type Site, siteNear } from './probeSites.js';

/** Butt joints, the places where the edges of their joists can be found, and what is believed of them all. */
export interface EndsOutlook {
  readonly ends: readonly {
    readonly joist: Joist;
    /** How far the centre may be from where it is believed, mm, for each width it may have. */
    readonly limits: readonly { readonly limit: number; readonly share: number }[];
  }[];
  /** `beside`: at a butt joint itself. */
  readonly places: readonly { readonly joist: Joist; readonly site: Site; readonly beside: boolean }[];
  /** Covariances of the centres at the ends and then at the places, mm2, row by row. */
  readonly covariance: Float64Array;
  /** Places whose edges are found. */
  readonly found: readonly number[];
  /** Variance of a centre read from its two edges, mm2. */
  readonly noise: number;
}

/** Farthest along the joist from where its edges are wanted that they are looked for, mm. */
const FARTHEST = 600;
/** Places nearer to each other than this along a joist are one, mm. */
const ONE_PLACE = 300;
/** Edges are also looked for here along the joist, as shares of its length: near its ends first. */
const ALONG = [1 / 8, 7 / 8, 3 / 8, 5 / 8];

/** What is believed of these butt joints, and where their joists can be probed: beside each joint and elsewhere along the joist. */
export function endsOutlook(inference: Inference, joists: readonly JoistWithEnds[], rules: RuleSet, reach: Reach): EndsOutlook {
  const within = reachable(inference, reach);
  const places = joists.flatMap((each) => placesOn(inference, each, reach, within));
  const ends = joists.flatMap(({ joist, ends: its }) => its.map((end) => ({ joist, v: end.along })));
  const { 'near-edge': near, 'far-edge': far } = inference.assumptions.spread;
  return {
    ends: ends.map(({ joist }) => ({ joist, limits: limitsOf(joist, rules) })),
    places,
    covariance: jointBelief(inference, [...ends, ...places.map(({ joist, site }) => ({ joist, v: site.v }))]),
    found: [],
    noise: (near * near + far * far) / 4,
  };
}

function placesOn(
  inference: Inference,
  { joist, ends }: JoistWithEnds,
  reach: Reach,
  within: (site: Site) => boolean,
): EndsOutlook['places'] {
  const frame = frameOf(inference.direction);
  const extent = frameExtent(inference.room, inference.direction);
  const [low, high] = [fromGrid(extent.low), fromGrid(extent.high)];
  const at = (v: number): number => fromGrid(centreAt(joist, frame, toGrid(v)));
  const wanted = [
    ...ends.map(({ along }) => ({ v: along, beside: true })),
    ...ALONG.map((share) => ({ v: low + (high - low) * share, beside: false })),
  ];
  const places: { joist: Joist; site: Site; beside: boolean }[] = [];
  for (const { v, beside } of wanted) {
    const site = siteNear(inference, reach, within, at, v, FARTHEST);
    if (site && places.every((each) => Math.abs(each.site.v - site.v) >= ONE_PLACE)) places.push({ joist, site, beside });
  }
  return places;
}

/** On timber too narrow for the edge rules the ends are to be on timber at all. */
function limitsOf({ width, widthSd = 0 }: Joist, rules: RuleSet): EndsOutlook['ends'][number]['limits'] {
  const gap = numberOf(rules, 'joint.gap');
  const edges = numberOf(rules, 'fixing.cutEdgeDistance') + numberOf(rules, 'fixing.timberEdgeDistance');
  const needed = (width - gap) / 2 > edges ? edges : LEAST_TIMBER;
  const limit = (of: number): number => (of - gap) / 2 - needed;
  if (widthSd === 0) return [{ limit: limit(width), share: 1 }];
  const off = 1.7320508075688772 * widthSd;
  return [
    { limit: limit(width), share: 2 / 3 },
    { limit: limit(width - off), share: 1 / 6 },
    { limit: limit(width + off), share: 1 / 6 },
  ];
}

/** The outlook once both edges are found at a place. */
export function afterEdges(outlook: EndsOutlook, place: number): EndsOutlook {
  const { covariance, ends, places, noise } = outlook;
  const size = ends.length + places.length;
  const at = ends.length + place;
  const seen = covariance[at * size + at] + noise;
  const after = covariance.map((c, i) => {
    const [row, column] = [Math.floor(i / size), i % size];
    return c - (covariance[row * size + at] * covariance[column * size + at]) / seen;
  });
  return { ...outlook, covariance: after, found: [...outlook.found, place] };
}

/** Points on which a joist's butt joints are judged together. */
const POINTS = 400;

/** Probability that all butt joints of one joist hold, each laid where its joist is then believed to be. */
export function certaintyOn({ ends, places, covariance, found }: EndsOutlook, joist: string): number {
  const size = ends.length + places.length;
  const its = ends.flatMap((end, i) => (end.joist.id === joist ? [i] : []));
  if (its.length === 0) return 1;
  const { presence } = ends[its[0]].joist;
  const { columns } = pivotedFactor(its.length, (i, j) => covariance[its[i] * size + its[j]]);
  const { limits } = ends[its[0]];
  let held = 0;
  for (let p = 0; p < POINTS; p++) {
    let farthest = 0;
    for (let i = 0; i < its.length; i++) {
      let off = 0;
      for (let c = 0; c < columns.length; c++) off += columns[c][i] * normalSpread(p, POINTS, c);
      farthest = Math.max(farthest, Math.abs(off));
    }
    for (const { limit, share } of limits) if (farthest <= limit) held += share / POINTS;
  }
  return held * (found.some((place) => places[place].joist.id === joist) ? 1 : presence);
}
