import type { Assumptions } from './assumptions.js';
import type { Component } from './components.js';
import type { Fit } from './fit.js';
import { movedBy } from './holeEvidence.js';
import { joistsInRoom } from './joistsInRoom.js';
import { nodeMeansOf } from './nodeMeans.js';
import { predictRow } from './predictRow.js';

/** What the posterior says of one joist: positions in mm from the near wall. */
export interface JoistBelief {
  /** Number in the leading component, absolute. */
  readonly number: number;
  readonly atStart: number;
  readonly atMiddle: number;
  readonly atEnd: number;
  readonly sd: number;
  readonly sdAtStart: number;
  readonly sdAtEnd: number;
  readonly width: number;
  readonly presence: number;
  /** Probes where the leader expects it met nothing: it is more likely missing than there. */
  readonly missed: boolean;
  readonly measured: boolean;
  readonly doubled: boolean;
}

/** How many joists the component's numbers are ahead of the leader's, if both count the joists between the marks alike. */
export function shiftBetween(leader: Component, other: Component): number | undefined {
  if (leader.weighed.sight.direction !== other.weighed.sight.direction) return undefined;
  const [ours, theirs] = [leader.weighed.placing.places, other.weighed.placing.places];
  let shift: number | undefined;
  for (let i = 0; i < ours.length; i++) {
    const [mine, its] = [ours[i], theirs[i]];
    if (mine === null || its === null) continue;
    const each = its.joist - mine.joist;
    if (shift !== undefined && each !== shift) return undefined;
    shift = each;
  }
  return shift;
}

/**
 * The joists of the leading component. Their moments are taken over every component that has a joist where the leader has this one,
 * under the same count from the marks they share; one that puts it farther away is not a spread of this joist but speaks
 * against it, and counts in `presence`.
 */
export function joistsOfComponents(components: readonly Component[], assumptions: Assumptions): JoistBelief[] {
  const [leader] = components;
  const { fit, sight, placing } = leader.weighed;
  const { first, last } = joistsInRoom(fit, sight);
  const numbers = Array.from({ length: last - first + 1 }, (_, i) => first + i + fit.system.origin);
  const views = weighty(components).map((component) => viewOf(component, leader, numbers));
  const marked = new Set(placing.places.map((place) => place?.joist));
  return numbers.map((number, index) => ({
    number,
    ...belief(views, index, fit, assumptions),
    measured: marked.has(number),
    doubled: placing.doubled.includes(number),
  }));
}

/** How far from the leader's place another component may put a joist and still mean the same one, as a share of the spacing. */
const SAME = 0.5;

/** Moments of one joist over the views, the leader's first. */
function belief(
  views: readonly View[],
  index: number,
  { system }: Fit,
  { missing }: Assumptions,
): Omit<JoistBelief, 'number' | 'measured' | 'doubled'> {
  const sums = { whole: 0, weight: 0, presence: 0, width: 0 };
  const places = [0, 1, 2].map(() => ({ mean: 0, square: 0 }));
  const leading = views[0].at(index) as JoistView;
  const at = leading.means[1];
  for (const view of views) {
    const joist = view.at(index);
    const { probability } = view.component;
    sums.whole += probability;
    if (joist === undefined || Math.abs(joist.means[1] - at) > SAME * system.spacing) {
      sums.presence += probability * view.timberNear(at, system.width / 2, 1 - missing);
      continue;
    }
    sums.weight += probability;
    sums.presence += probability * joist.presence;
    sums.width += probability * joist.width;
    for (let i = 0; i < 3; i++) {
      places[i].mean += probability * joist.means[i];
      places[i].square += probability * (joist.variances[i] + joist.means[i] * joist.means[i]);
    }
  }
  const [start, middle, end] = places.map(({ mean, square }) => {
    const centre = mean / sums.weight;
    return { at: centre, sd: Math.sqrt(Math.max(0, square / sums.weight - centre * centre)) };
  });
  return {
    atStart: start.at,
    atMiddle: middle.at,
    atEnd: end.at,
    sd: middle.sd,
    sdAtStart: start.sd,
    sdAtEnd: end.sd,
    width: sums.width / sums.weight,
    presence: sums.presence / sums.whole,
    missed: leading.presence < 0.5,
  };
}

/** Share of the probability on which the joists' moments are taken. */
const ENOUGH = 0.98;

/** The leader and the most probable of the rest, until they make up nearly all of the probability. */
function weighty(components: readonly Component[]): Component[] {
  const whole = components.reduce((sum, { probability }) => sum + probability, 0);
  let sum = 0;
  return components.filter(({ probability }) => {
    const more = sum < ENOUGH * whole;
    sum += probability;
    return more;
  });
}

interface JoistView {
  /** At the start, the middle and the end of the room along the joists. */
  readonly means: readonly number[];
  readonly variances: readonly number[];
  readonly width: number;
  readonly presence: number;
}

interface View {
  readonly component: Component;
  readonly at: (index: number) => JoistView | undefined;
  /** Probability of timber within `reach` of a place, given that each joist is there with probability `presence`. */
  readonly timberNear: (place: number, reach: number, presence: number) => number;
}

/** What one component says of the leader's joists, which have consecutive numbers. */
function viewOf(component: Component, leader: Component, numbers: readonly number[]): View {
  const { sight } = component.weighed;
  if (sight.direction !== leader.weighed.sight.direction) return { component, at: () => undefined, timberNear: () => 0 };
  const shift = shiftBetween(leader, component);
  const at = shift === undefined ? () => undefined : rowView(component, numbers, shift);
  return { component, at, timberNear: timberOf(component) };
}

function timberOf({ weighed: { fit, sight } }: Component): View['timberNear'] {
  let means: number[] | undefined;
  return (place, reach, presence) => {
    if (means === undefined) {
      const { first, last } = joistsInRoom(fit, sight);
      const at = nodeMeansOf(fit);
      means = Array.from({ length: last - first + 1 }, (_, i) => at(first + i));
    }
    return means.some((mean) => Math.abs(mean - place) <= reach) ? presence : 0;
  };
}

function rowView(component: Component, numbers: readonly number[], shift: number): View['at'] {
  const { holes } = component;
  const { fit, sight, placing } = component.weighed;
  const { origin, assumptions } = fit.system;
  const joists = numbers.map((number) => number + shift - origin);
  const along = [sight.low, 0, sight.high];
  const timbers = (joist: number): number => (placing.doubled.includes(joist + origin) ? 2 : 1);
  const beside = holes?.targets ?? [];
  const row = predictRow(fit, { first: joists[0], last: joists[joists.length - 1], along, timbers, beside });
  const marked = new Set(placing.places.map((place) => place?.joist));
  return (index) => {
    const moved = holes ? movedBy(holes, (target) => row.covariance(index, target)) : { mean: 0, variance: 0 };
    const there = holes?.presence.get(joists[index]) ?? 1 - assumptions.missing;
    const at = 3 * index;
    const varianceAt = (i: number): number => Math.max(row.variances[at + i] * 0.1, row.variances[at + i] + moved.variance);
    return {
      means: [row.means[at] + moved.mean, row.means[at + 1] + moved.mean, row.means[at + 2] + moved.mean],
      variances: [varianceAt(0), varianceAt(1), varianceAt(2)],
      width: row.widths[index],
      presence: marked.has(numbers[index] + shift) ? 1 : there,
    };
  };
}
