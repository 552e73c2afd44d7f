import type { RuleSet } from '../rules/ruleSet.js';
import { numberOf } from '../rules/ruleValue.js';
import { fromGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import { LEAST_TIMBER } from './bearing.js';
import { componentsFrom, scattered } from './componentsFrom.js';
import type { Inference } from './inferJoists.js';
import { frameExtent } from './joistLine.js';
import { normalBelowQuick, normalWithin } from './normal.js';
import { nearestJoist, type Scatter, strayOf } from './scatterPoint.js';

/** Where an end joint falls. */
export interface EndJoint {
  /** Id of the joist it is meant for. */
  readonly joist: string;
  /** Plan coordinate across the joists, mm. */
  readonly across: number;
  /** Plan coordinate along the joists at the middle of the board's end, mm. */
  readonly along: number;
}

/** How sure the end joints of one joist are, all of them together. */
export interface JoistConfidence {
  readonly joist: string;
  /** Probability that each side of each has at least 10 mm of timber. */
  readonly onTimber: number;
  /** Probability that all are within the edge rules. */
  readonly withinEdgeRules: number;
}

/** How sure all end joints are together, and those of each joist. */
export interface JointConfidence {
  readonly onTimber: number;
  readonly withinEdgeRules: number;
  /** In the order of the joists. */
  readonly joists: readonly JoistConfidence[];
}

/** Points of the posterior on which the figures are taken. */
const POINTS = 1200;
/** Fewest of them for one reading of the marks. */
const LEAST = 8;

/**
 * How sure the end joints of a layout are, joint over everything the marks leave open: if the spacing is wrong, every inferred joist
 * is wrong together, and the joints of one joist share its fate. Without an inference the joists stray independently.
 *
 * The tolerance is that of {@link bearing}; a width that nobody measured counts with its spread.
 */
export function jointConfidence(
  ends: readonly EndJoint[],
  joists: readonly Joist[],
  rules: RuleSet,
  inference?: Inference,
): JointConfidence {
  const wanted = joists.filter(({ id }) => ends.some(({ joist }) => joist === id));
  const groups = wanted.map((joist) => ({ joist, ends: ends.filter((end) => end.joist === joist.id) }));
  const gap = numberOf(rules, 'joint.gap');
  const edges = numberOf(rules, 'fixing.cutEdgeDistance') + numberOf(rules, 'fixing.timberEdgeDistance');
  const limits = [LEAST_TIMBER, edges].map(
    (needed): Limit =>
      (width) =>
        (width - gap) / 2 - needed,
  );
  const [onTimber, withinEdgeRules] =
    inference === undefined ? limits.map((limit) => independently(groups, limit)) : together(groups, limits, inference);
  return {
    onTimber: onTimber.all,
    withinEdgeRules: withinEdgeRules.all,
    joists: wanted.map(({ id }, i) => ({ joist: id, onTimber: onTimber.each[i], withinEdgeRules: withinEdgeRules.each[i] })),
  };
}

interface Group {
  readonly joist: Joist;
  readonly ends: readonly EndJoint[];
}

interface Figures {
  readonly all: number;
  /** By group. */
  readonly each: readonly number[];
}

/** How far a joint may be off the middle of a joist of this width, mm. */
type Limit = (width: number) => number;

const rounded = (value: number): number => Math.min(1, Math.round(value * 1e4) / 1e4);

/** Joists that stray independently: the figures multiply; the joints of one joist share its fate. */
function independently(groups: readonly Group[], limitOf: Limit): Figures {
  const each = groups.map(({ joist, ends }) => {
    const away = ends.map((end) => end.across - centreOf(joist, end));
    const [least, greatest] = [Math.min(...away), Math.max(...away)];
    const limit = limitOf(joist.width) - (greatest - least) / 2;
    return joist.presence * normalWithin((least + greatest) / 2, joist.sd, Math.round(limit * 1000) / 1000);
  });
  return { all: rounded(each.reduce((all, one) => all * one, 1)), each: each.map(rounded) };
}

/** Where a joist's centre is beside an end joint, plan coordinate across the joists. */
function centreOf({ start, end }: Joist, { along }: EndJoint): number {
  const upright = Math.abs(end.y - start.y) >= Math.abs(end.x - start.x);
  const [from, to] = upright ? [start.y, end.y] : [start.x, end.x];
  const [first, last] = upright ? [start.x, end.x] : [start.y, end.y];
  return from === to ? first : first + ((last - first) * (along - from)) / (to - from);
}

/** The figures for each limit, over the posterior. */
function together(groups: readonly Group[], limits: readonly Limit[], inference: Inference): Figures[] {
  const { room, direction } = inference;
  const components = scattered(componentsFrom(inference), POINTS, LEAST);
  const { near, low, high } = frameExtent(room, direction);
  const middle = fromGrid(low + high) / 2;
  const aims = groups.map(({ joist, ends }) => ({
    widths: widthsOf(joist),
    ends: ends.map(({ across, along }) => ({ u: across - fromGrid(near), v: (along - middle) / 1000 })),
  }));
  const sums = limits.map(() => ({ all: 0, each: groups.map(() => 0) }));
  let total = 0;
  for (const { weighed, probability, scatter } of components) {
    total += probability;
    if (weighed.sight.direction !== direction) continue;
    const { missing, ownSkew } = weighed.fit.system.assumptions;
    for (let p = 0; p < scatter.points; p++) {
      const share = probability * scatter.weights[p];
      const every = limits.map(() => 1);
      aims.forEach((aim, i) => {
        const held = heldBy(scatter, p, aim, limits, missing, ownSkew);
        limits.forEach((_, k) => {
          sums[k].each[i] += share * held[k];
          every[k] *= held[k];
        });
      });
      limits.forEach((_, k) => {
        sums[k].all += share * every[k];
      });
    }
  }
  return sums.map(({ all, each }) => ({ all: rounded(all / total), each: each.map((one) => rounded(one / total)) }));
}

interface Aim {
  readonly widths: readonly { readonly width: number; readonly share: number }[];
  readonly ends: readonly { readonly u: number; readonly v: number }[];
}

/** Widths that a joist may have, with their shares: three points that keep the mean and the spread. */
function widthsOf({ width, widthSd = 0 }: Joist): Aim['widths'] {
  if (widthSd === 0) return [{ width, share: 1 }];
  const off = 1.7320508075688772 * widthSd;
  return [
    { width, share: 2 / 3 },
    { width: width - off, share: 1 / 6 },
    { width: width + off, share: 1 / 6 },
  ];
}

/** Probability, at one point of the posterior, that the joist beneath holds every end of the aim, for each limit. */
function heldBy(scatter: Scatter, p: number, aim: Aim, limits: readonly Limit[], missing: number, ownSkew: number): number[] {
  const [first] = aim.ends;
  const j = nearestJoist(scatter, p, first.u, first.v);
  const slope = scatter.skew[p] + scatter.fan[p] * (scatter.first + j);
  const node = scatter.nodes[p * scatter.joists + j] + strayOf(scatter, p, j);
  let [least, greatest, farthest] = [Infinity, -Infinity, 0];
  for (const { u, v } of aim.ends) {
    const away = u - node - v * slope;
    least = Math.min(least, away);
    greatest = Math.max(greatest, away);
    farthest = Math.max(farthest, Math.abs(v));
  }
  const own = farthest * ownSkew;
  const sd = Math.sqrt(scatter.straying.variance[j] + own * own);
  const present = scatter.straying.readings[j].length > 0 ? 1 : 1 - missing;
  return limits.map((limitOf) => {
    let held = 0;
    for (const { width, share } of aim.widths) {
      const limit = limitOf(width);
      const [from, to] = [greatest - limit, least + limit];
      if (to > from) held += share * (normalBelowQuick(to / sd) - normalBelowQuick(from / sd));
    }
    return held * present;
  });
}
