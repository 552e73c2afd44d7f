import { fromGrid } from '../survey/grid.js';
import type { Component } from './components.js';
import { componentsFrom, scattered } from './componentsFrom.js';
import type { Fit } from './fit.js';
import { frameOf } from './frame.js';
import type { Inference } from './inferJoists.js';
import { frameExtent } from './joistLine.js';
import { addMeeting, type Meetings, type MeetingsBySite, meetingsBySite, noMeetings } from './meetings.js';
import type { Site } from './probeSites.js';
import type { Sight } from './readings.js';
import { nearestJoist, type Scatter, strayOf } from './scatterPoint.js';
import { timberProfiles } from './timberProfile.js';

/**
 * A weighted sample of everything the marks leave open, and what a hole at each site would meet there: at the points whose joists are
 * near the site the probability of timber is `excess` above that of a false hit; at all other points only a false hit is possible.
 */
export interface Outcomes extends MeetingsBySite {
  /** Probability of each point of the sample. */
  readonly weights: Float64Array;
  readonly falseHit: number;
  /** How far the joist nearest to each anchor, what it strays on its own left aside, is from it, mm, at `point * anchors + anchor`; beyond any joist where they run the other way. */
  readonly away: Float64Array;
  readonly anchors: number;
  /** Nominal spacing of each point's reading, mm; 0 where its joists follow none or run the other way. */
  readonly spacing: Float64Array;
}

/** Points of the sample. */
const POINTS = 320;
/** Draws of components that the points are shared among. */
const DRAWS = 40;
/** Distance that stands for joists running the other way, mm. */
const ELSEWHERE = 1e6;

/** What holes at these sites would meet; `anchors` are places across the joists at mid-length, plan coordinates in mm. */
export function outcomesOf(inference: Inference, sites: readonly Site[], anchors: readonly number[]): Outcomes {
  const { room, direction } = inference;
  const components = scattered(drawn(componentsFrom(inference)), POINTS, 1);
  const count = components.reduce((sum, { scatter }) => sum + (scatter?.points ?? 0), 0);
  const weights = new Float64Array(count);
  const away = new Float64Array(count * anchors.length);
  const spacing = new Float64Array(count);
  const near = fromGrid(frameExtent(room, direction).near);
  const meetings = noMeetings();
  const lines = new Map<string, Line[]>();
  let offset = 0;
  for (const { scatter, probability, weighed } of components) {
    if (scatter === undefined) continue;
    const same = weighed.sight.direction === direction;
    for (let p = 0; p < scatter.points; p++) {
      weights[offset + p] = probability * scatter.weights[p];
      spacing[offset + p] = same && weighed.placing.family.kind === 'usual' ? weighed.placing.family.spacing : 0;
      anchors.forEach((anchor, a) => {
        const place = (offset + p) * anchors.length + a;
        if (!same) {
          away[place] = ELSEWHERE;
          return;
        }
        const j = nearestJoist(scatter, p, anchor - near, 0);
        away[place] = scatter.nodes[p * scatter.joists + j] - (anchor - near);
      });
    }
    const seen = lines.get(weighed.sight.direction) ?? linesOf(sites, inference, weighed.sight);
    lines.set(weighed.sight.direction, seen);
    for (const line of seen) meet(weighed.fit, scatter, offset, line, meetings);
    offset += scatter.points;
  }
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return {
    weights: weights.map((weight) => weight / sum),
    ...meetingsBySite(meetings, sites.length),
    falseHit: inference.assumptions.falseHit,
    away,
    anchors: anchors.length,
    spacing,
  };
}

/** A component as often as it is drawn by even steps along the probabilities of all, its share of the draws its probability. */
function drawn(components: readonly Component[]): Component[] {
  const total = components.reduce((sum, { probability }) => sum + probability, 0);
  let [sum, draws] = [0, 0];
  return components.flatMap((component) => {
    sum += component.probability / total;
    const until = Math.min(DRAWS, Math.max(0, Math.floor(sum * DRAWS + 0.5)));
    const times = until - draws;
    draws = until;
    return times === 0 ? [] : [{ ...component, probability: times / DRAWS }];
  });
}

/** Sites on one line as one reading sees them, in order across its joists: mm from the near wall, and m along from the middle. */
interface Line {
  readonly along: number;
  readonly at: readonly number[];
  readonly sites: readonly number[];
}

/** The sites as lines across the joists that a reading sees; where its joists run the other way, each site is a line of its own. */
function linesOf(sites: readonly Site[], { room, direction }: Inference, sight: Sight): Line[] {
  const [ours, theirs] = [frameOf(direction), frameOf(sight.direction)];
  const extent = frameExtent(room, sight.direction);
  const middle = fromGrid(extent.low + extent.high) / 2;
  const lines: { along: number; at: number[]; sites: number[] }[] = [];
  sites.forEach((site, index) => {
    const { u, v } = theirs.into(ours.back(site.u, site.v));
    const along = (v - middle) / 1000;
    const last = lines[lines.length - 1];
    const line =
      last && last.along === along && last.at[last.at.length - 1] < u - sight.near ? last : { along, at: [], sites: [] };
    if (line !== last) lines.push(line);
    line.at.push(u - sight.near);
    line.sites.push(index);
  });
  return lines;
}

/** Adds what holes on one line may meet at each point of one component's scatter. */
function meet(fit: Fit, scatter: Scatter, offset: number, { along, at, sites }: Line, meetings: Meetings): void {
  const { joists, nodes, skew, fan, first } = scatter;
  const profiles = timberProfiles(fit, scatter);
  for (let p = 0; p < scatter.points; p++) {
    let site = 0;
    for (let j = 0; j < joists && site < at.length; j++) {
      const profile = profiles[j];
      const centre = nodes[p * joists + j] + along * (skew[p] + fan[p] * (first + j)) + strayOf(scatter, p, j);
      if (centre + profile.length <= at[site]) continue;
      site = firstFrom(at, centre - profile.length, site);
      for (; site < at.length && at[site] < centre + profile.length; site++) {
        const away = Math.abs(at[site] - centre);
        const step = Math.floor(away);
        const to = profile[step + 1] ?? 0;
        addMeeting(meetings, sites[site], offset + p, profile[step] + (away - step) * (to - profile[step]));
      }
    }
  }
}

/** Index of the first place that is beyond a limit, from `low` on. */
function firstFrom(at: readonly number[], limit: number, low: number): number {
  let high = at.length;
  let from = low;
  while (from < high) {
    const middle = (from + high) >> 1;
    if (at[middle] > limit) high = middle;
    else from = middle + 1;
  }
  return from;
}
