import type { Stretch } from './fixingMarks.js';
import { type BoardEdge, type LinePoint, type Run, type Span, sideAt, slant, type Timber } from './timberUnder.js';

/** A straight part of the line on which the screws of a run are driven. */
interface Leg {
  readonly from: LinePoint;
  readonly to: LinePoint;
  readonly span: Span;
}

/** Something that fixings keep clear of: the inside of a ring, if it is closed, and a margin about it. */
export interface Obstacle {
  readonly sides: readonly (readonly [LinePoint, LinePoint])[];
  readonly closed: boolean;
  readonly margin: number;
}

/** The line on which the screws of one run of timber go. */
export interface ScrewPath {
  readonly legs: readonly Leg[];
  /** Nearest the line comes to a cut end beside it, where that is less than the rule; grid steps. */
  readonly tooNear?: { readonly distance: number; readonly at: LinePoint };
}

/**
 * The line of the screws: the middle of the timber, moved in from an end of the piece by the distance that its rule asks for,
 * and never nearer the edge of the timber than `timberEdge`. Where both cannot be had the screw stays on the timber. `beside`
 * is how far beside the middle of the timber it goes: the first of these for which there is room.
 */
export function screwPath(run: Run, timber: Timber, timberEdge: number, beside: readonly number[] = [0]): ScrewPath {
  const legs = run.spans.flatMap((span) => legsOf(span, timber, timberEdge, beside));
  let tooNear: ScrewPath['tooNear'];
  for (const { from, to, span } of legs) {
    for (const at of [from, to]) {
      for (const side of [span.near, span.far]) {
        const distance = Math.abs(at.u - sideAt(side, at.v)) / slant(side);
        // Half a grid step: places are whole steps, sides need not be.
        if (distance < side.distance - 0.5 && (tooNear === undefined || distance < tooNear.distance)) tooNear = { distance, at };
      }
    }
  }
  return { legs, ...(tooNear && { tooNear }) };
}

/** Where the line is at a distance along the timber, in whole grid steps. */
export function pathAt({ legs }: ScrewPath, v: number): LinePoint {
  const leg = legs.find(({ from, to }) => from.v <= v && v <= to.v) ?? legs[legs.length - 1];
  return { u: Math.round(between(leg, v)), v };
}

/** Stretches of the line that lie within an obstacle or its margin. */
export function blockedBy(path: ScrewPath, obstacle: Obstacle): Stretch[] {
  return path.legs.flatMap((leg) => [
    ...(obstacle.closed ? inside(leg, obstacle) : []),
    ...obstacle.sides.flatMap((side) => besideSide(leg, side, obstacle.margin)),
  ]);
}

/** Stretches of the line too near a side of the piece that it does not run along. */
export function blockedByEdges(path: ScrewPath, edges: readonly BoardEdge[]): Stretch[] {
  return path.legs.flatMap((leg) =>
    edges
      .filter((edge) => edge !== leg.span.near && edge !== leg.span.far)
      .flatMap(({ a, b, distance }) => besideSide(leg, [a, b], distance)),
  );
}

/** Stretches in order, those that overlap as one. */
export function merged(stretches: readonly Stretch[]): Stretch[] {
  const result: { from: number; to: number }[] = [];
  for (const { from, to } of [...stretches].sort((a, b) => a.from - b.from || a.to - b.to)) {
    const last = result[result.length - 1];
    if (last !== undefined && from < last.to) last.to = Math.max(last.to, to);
    else result.push({ from, to });
  }
  return result;
}

function legsOf(span: Span, timber: Timber, timberEdge: number, besides: readonly number[]): Leg[] {
  const reach = timber.width / 2 - timberEdge;
  const [near, far] = [
    (v: number) => sideAt(span.near, v) + span.near.distance * slant(span.near),
    (v: number) => sideAt(span.far, v) - span.far.distance * slant(span.far),
  ];
  const fits = (beside: number): boolean =>
    Math.abs(beside) <= reach &&
    [span.from, span.to].every((v) => {
      const at = timber.centreAt(v) + beside;
      return near(v) <= at && at <= far(v);
    });
  const beside = besides.find(fits) ?? besides[0];
  const centre = (v: number) => timber.centreAt(v) + beside;
  const [timberNear, timberFar] = [(v: number) => timber.centreAt(v) - reach, (v: number) => timber.centreAt(v) + reach];
  const lines = [centre, near, far, timberNear, timberFar];
  const place = (v: number): number => {
    const wanted = near(v) <= far(v) ? Math.max(near(v), Math.min(far(v), centre(v))) : (near(v) + far(v)) / 2;
    return Math.round(Math.max(timberNear(v), Math.min(timberFar(v), wanted)));
  };
  const levels = [span.from, span.to, ...turns(lines, span)].sort((a, b) => a - b);
  const legs: Leg[] = [];
  for (let i = 1; i < levels.length; i++) {
    const [from, to] = [levels[i - 1], levels[i]];
    if (from < to) legs.push({ from: { u: place(from), v: from }, to: { u: place(to), v: to }, span });
  }
  return legs;
}

/** Levels at which two of the lines cross, so that the line of screws turns. */
function turns(lines: readonly ((v: number) => number)[], { from, to }: Stretch): number[] {
  const levels: number[] = [];
  for (let i = 0; i < lines.length; i++) {
    for (let k = i + 1; k < lines.length; k++) {
      const [start, end] = [lines[i](from) - lines[k](from), lines[i](to) - lines[k](to)];
      if (start * end < 0) levels.push(Math.round(from + ((to - from) * start) / (start - end)));
    }
  }
  return levels;
}

const between = ({ from, to }: Leg, v: number): number =>
  from.u === to.u || from.v === to.v ? from.u : from.u + ((to.u - from.u) * (v - from.v)) / (to.v - from.v);

/**
 * The stretch of a leg within a distance of a side. The distance to a side is convex along the leg, so the stretch is one; its
 * ends are found by halving whole grid steps.
 */
function besideSide(leg: Leg, [a, b]: readonly [LinePoint, LinePoint], clearance: number): Stretch[] {
  const { from, to } = leg;
  if (clearance <= 0) return [];
  const distance = clearance + rounding(leg);
  if (Math.max(a.v, b.v) + distance <= from.v || Math.min(a.v, b.v) - distance >= to.v) return [];
  if (Math.max(a.u, b.u) + distance <= Math.min(from.u, to.u) || Math.min(a.u, b.u) - distance >= Math.max(from.u, to.u))
    return [];
  const covers = (u: number): boolean => Math.min(a.u, b.u) <= u && u <= Math.max(a.u, b.u);
  if (a.v === b.v && covers(from.u) && covers(to.u)) return [{ from: a.v - distance, to: a.v + distance }];
  const squared = (v: number): number => squaredDistance({ u: between(leg, v), v }, a, b);
  const limit = distance * distance;
  const nearest = lowest(squared, from.v, to.v);
  if (squared(nearest) >= limit) return [];
  return [
    {
      from: squared(from.v) < limit ? from.v - 1 : turning((v) => squared(v) < limit, from.v, nearest) - 1,
      to: squared(to.v) < limit ? to.v + 1 : turning((v) => squared(v) >= limit, nearest, to.v),
    },
  ];
}

/** On a slanting leg a place is moved to the grid, by up to half a step. */
const rounding = ({ from, to }: Leg): number => (from.u === to.u ? 0 : 1);

/** Where a convex function is least, to a grid step. */
function lowest(f: (v: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  while (high - low > 2) {
    const third = Math.floor((high - low) / 3);
    if (f(low + third) <= f(high - third)) high -= third;
    else low += third;
  }
  return [low, Math.round((low + high) / 2), high].reduce((best, v) => (f(v) < f(best) ? v : best));
}

/** First whole step at which a statement turns true; it is false at `from`, true at `to`. */
function turning(isTrue: (v: number) => boolean, from: number, to: number): number {
  let [low, high] = [from, to];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (isTrue(middle)) high = middle;
    else low = middle;
  }
  return high;
}

function squaredDistance(p: LinePoint, a: LinePoint, b: LinePoint): number {
  const [du, dv] = [b.u - a.u, b.v - a.v];
  const length = du * du + dv * dv;
  const share = length === 0 ? 0 : Math.max(0, Math.min(1, ((p.u - a.u) * du + (p.v - a.v) * dv) / length));
  const [eu, ev] = [p.u - a.u - share * du, p.v - a.v - share * dv];
  return eu * eu + ev * ev;
}

/** Stretches of a leg inside a ring. */
function inside(leg: Leg, { sides }: Obstacle): Stretch[] {
  const { from, to } = leg;
  const offset = (p: LinePoint): number => (p.u - from.u) * (to.v - from.v) - (p.v - from.v) * (to.u - from.u);
  const levels: number[] = [];
  for (const [a, b] of sides) {
    const [start, end] = [offset(a), offset(b)];
    if (start < 0 === end < 0) continue;
    levels.push(Math.round(a.v + ((b.v - a.v) * start) / (start - end)));
  }
  levels.sort((a, b) => a - b);
  const result: Stretch[] = [];
  for (let i = 0; i + 1 < levels.length; i += 2) {
    const [low, high] = [Math.max(levels[i] - rounding(leg), from.v), Math.min(levels[i + 1] + rounding(leg), to.v)];
    if (low < high) result.push({ from: low === from.v ? low - 1 : low, to: high === to.v ? high + 1 : high });
  }
  return result;
}
