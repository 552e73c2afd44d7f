import type { Assumptions } from './assumptions.js';
import { logarithm } from './exponential.js';
import { type Family, SPACING_LIMITS } from './families.js';
import type { Reading, Sight } from './readings.js';

/**
 * Where one reading is taken to lie: on the joist with this number, and by how many of its widths the reading is off the
 * joist's middle (an edge by a half; the timbers of a doubled joist by a half, its edges by a whole). `null`: on none.
 */
export type Place = { readonly joist: number; readonly off: number } | null;

/** A way of reading the marks: one family, and a place for each reading in the order of the sight. */
export interface Placing {
  readonly family: Family;
  readonly places: readonly Place[];
  /** Joists that are taken to be two side by side. */
  readonly doubled: readonly number[];
}

/** How far from its expected place a reading may be and still be taken for that joist, standard deviations. */
const GATE = 5;
/** Placings kept at each step: in all, and of one family. */
const KEPT = 100;
const KEPT_OF_FAMILY = 16;
/** A placing this many times (as a logarithm) less likely than the best is dropped. */
const BEHIND = 15;
/** Straying and drift used while searching, mm; each placing is weighed exactly afterwards. */
const SEARCH_STRAYING = 5;
const SEARCH_DRIFT = 1.5;
const LOG_ROOT_TWO_PI = 0.9189385332046727;

/**
 * A partial placing: the state of a Kalman filter that walks across the joists. `a` is the place of joist `joist` at the middle
 * of the room, `t` the spacing, `b` the slope; the rest is their covariance.
 */
interface Walk {
  readonly family: Family;
  readonly score: number;
  /** Order of birth, which breaks ties. */
  readonly order: number;
  readonly before: Walk | null;
  readonly place: Place;
  /** The reading before this one on the same joist, for doubled joists: its place is then shifted by half a width. */
  readonly doubles: boolean;
  readonly joist: number;
  readonly marked: number;
  readonly last: Reading | null;
  readonly a: number;
  readonly t: number;
  readonly b: number;
  readonly aa: number;
  readonly at: number;
  readonly ab: number;
  readonly tt: number;
  readonly tb: number;
  readonly bb: number;
}

/**
 * Every way of placing the readings on joists that is not far behind the best, family by family: each reading is taken for a
 * joist that has been met, for a later one, or for none. The walk goes across the room from reading to reading.
 */
export function searchPlacings(sight: Sight, families: readonly Family[], width: number, assumptions: Assumptions): Placing[] {
  const length = Math.max(1, sight.far - sight.near);
  const { spurious, repeated, doubled, fan } = assumptions;
  const logSpurious = logarithm(spurious / length);
  const logFirst = logarithm((1 - spurious) / length);
  const logJoist = logarithm(1 - spurious);
  const logDoubled = logarithm(doubled);
  const skewVariance = severalLines(sight.readings) ? assumptions.skewAskew * assumptions.skewAskew : 0;
  let order = 0;
  let walks: Walk[] = families.map((family) => ({
    ...{ family, score: logarithm(family.prior), order: order++, before: null, place: null, doubles: false, joist: 0 },
    ...{ marked: 0, last: null, a: 0, t: family.spacing, b: 0, aa: 0, at: 0, ab: 0, tt: family.spread * family.spread },
    ...{ tb: 0, bb: skewVariance },
  }));

  const begin = (walk: Walk, reading: Reading): Walk => {
    const noise = reading.variance + SEARCH_STRAYING * SEARCH_STRAYING;
    return {
      ...walk,
      ...{ score: walk.score + logFirst, order: order++, before: walk, place: { joist: 0, off: reading.edge / 2 } },
      ...{ doubles: false, marked: 1, last: reading, a: reading.u - (reading.edge * width) / 2 },
      ...{ aa: noise + reading.v * reading.v * walk.bb, ab: -reading.v * walk.bb },
    };
  };

  /** The walk with the reading on the joist `bays` further on, or nothing if it is too far from there. */
  const step = (walk: Walk, reading: Reading, bays: number, value: number, off: number, doubles: boolean): Walk | undefined => {
    const { family } = walk;
    const straying = family.kind === 'irregular' ? 4 : SEARCH_STRAYING;
    const drift = family.kind === 'irregular' ? family.drift[family.drift.length - 1] : SEARCH_DRIFT;
    const far = Math.abs(bays);
    const a = walk.a + bays * walk.t;
    const at = walk.at + bays * walk.tt;
    const aa = walk.aa + bays * (walk.at + at) + drift * drift * far;
    const ab = walk.ab + bays * walk.tb;
    const bb = walk.bb === 0 ? 0 : walk.bb + fan * fan * far;
    const { v } = reading;
    const [ha, ht, hb] = [aa + v * ab, at + v * walk.tb, ab + v * bb];
    const noise = reading.variance + straying * straying + (off === 0 ? 0 : 4);
    const variance = ha + v * hb + noise;
    const residual = value - a - v * walk.b;
    if (residual * residual > GATE * GATE * variance) return undefined;
    const [ka, kt, kb] = [ha / variance, ht / variance, hb / variance];
    const t = walk.t + kt * residual;
    if (t < SPACING_LIMITS.least || t > SPACING_LIMITS.greatest) return undefined;
    const choice =
      bays === 0 ? logarithm(repeated / walk.marked) : logarithm((1 - repeated) / Math.max(1, length / t - walk.marked));
    return {
      family,
      score:
        walk.score +
        logJoist +
        choice +
        (doubles ? logDoubled : 0) -
        LOG_ROOT_TWO_PI -
        (logarithm(variance) + (residual * residual) / variance) / 2,
      order: order++,
      before: walk,
      place: { joist: walk.joist + bays, off },
      doubles,
      joist: walk.joist + bays,
      marked: walk.marked + (bays === 0 ? 0 : 1),
      last: reading,
      a: a + ka * residual,
      t,
      b: walk.b + kb * residual,
      aa: aa - ka * ha,
      at: at - ka * ht,
      ab: ab - ka * hb,
      tt: walk.tt - kt * ht,
      tb: walk.tb - kt * hb,
      bb: bb - kb * hb,
    };
  };

  for (const reading of sight.readings) {
    const next: Walk[] = [];
    for (const walk of walks) {
      next.push({ ...walk, score: walk.score + logSpurious, order: order++, before: walk, place: null, doubles: false });
      if (walk.last === null) {
        next.push(begin(walk, reading));
        continue;
      }
      const off = reading.edge / 2;
      const value = reading.u - off * width;
      for (const bays of baysBetween(walk, reading, value)) {
        const longer = step(walk, reading, bays, value, off, false);
        if (longer) next.push(longer);
      }
      const apart = doubledAt(walk, reading, width);
      if (apart !== undefined) {
        const both = step(walk, reading, 0, apart, reading.edge === 0 ? 0.5 : 1, true);
        if (both) next.push(both);
      }
    }
    walks = bestOf(next);
  }
  return walks.map((walk) => placingOf(walk, sight.readings.length));
}

/** Whether the readings lie on lines far enough apart to show which way the joists run. */
const severalLines = (readings: readonly Reading[]): boolean =>
  readings.length > 1 && Math.max(...readings.map(({ v }) => v)) - Math.min(...readings.map(({ v }) => v)) > 0.3;

/** Numbers of bays from the walk's joist to the joists that the reading may be on. */
function baysBetween(walk: Walk, reading: Reading, value: number): number[] {
  const gap = value - walk.a - reading.v * walk.b;
  const sd = Math.sqrt(walk.tt);
  const [shortest, longest] = [
    Math.max(SPACING_LIMITS.least, walk.t - 4 * sd),
    Math.min(SPACING_LIMITS.greatest, walk.t + 4 * sd),
  ];
  const slack = 60;
  const least = Math.floor((gap - slack) / (gap > 0 ? longest : shortest));
  const most = Math.ceil((gap + slack) / (gap > 0 ? shortest : longest));
  const bays: number[] = [];
  for (let n = Math.max(-2, least); n <= Math.min(most, 40); n++) bays.push(n);
  return bays;
}

/** The value that places a reading on the second timber of a doubled joist whose first timber was read last. */
function doubledAt(walk: Walk, reading: Reading, width: number): number | undefined {
  const { last, place, before } = walk;
  if (last === null || place === null || before === null || walk.doubles || last.edge === 1) return undefined;
  if (reading.edge !== -last.edge) return undefined;
  const expected = reading.edge === 0 ? width : 2 * width;
  const difference = reading.u - last.u - expected - (reading.v - last.v) * walk.b;
  const allowed = 4 * Math.sqrt(reading.variance + last.variance) + width / 6;
  if (Math.abs(difference) > allowed) return undefined;
  return reading.edge === 0 ? reading.u : reading.u - width / 2;
}

function bestOf(walks: readonly Walk[]): Walk[] {
  const ordered = walks.slice().sort((one, other) => other.score - one.score || one.order - other.order);
  const counts = new Map<Family, number>();
  const kept: Walk[] = [];
  for (const walk of ordered) {
    if (kept.length === KEPT || walk.score < ordered[0].score - BEHIND) break;
    const count = counts.get(walk.family) ?? 0;
    if (count === KEPT_OF_FAMILY) continue;
    counts.set(walk.family, count + 1);
    kept.push(walk);
  }
  return kept;
}

function placingOf(end: Walk, count: number): Placing {
  const places: Place[] = new Array(count).fill(null);
  const doubled: number[] = [];
  let walk: Walk | null = end;
  let second = false;
  for (let i = count - 1; i >= 0 && walk !== null; i--) {
    const { place } = walk as Walk;
    // The first timber of a doubled joist was read as if it stood alone.
    places[i] = second && place !== null ? { joist: place.joist, off: place.off - 0.5 } : place;
    second = (walk as Walk).doubles;
    if (second) doubled.push((walk as Walk).joist);
    walk = (walk as Walk).before;
  }
  return { family: end.family, places, doubled: doubled.reverse() };
}
