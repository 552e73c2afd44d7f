import { logarithm } from './exponential.js';
import { type Family, SPACING_LIMITS } from './families.js';
import { addCopy, FACTS, OF_FACTS, OF_STATE, STATE, type Walks } from './walks.js';

/** How far from its expected place a reading may be and still be taken for that joist, standard deviations. */
const GATE = 5;
/** Straying and drift used while searching, mm; each placing is weighed exactly afterwards. */
const STRAYING = 5;
const DRIFT = 1.5;
/** Irregular joists stray in their bays, hardly on their own. */
const IRREGULAR_STRAYING = 4;
/** Added to the variance of an edge for the width not being quite known, mm2. */
const EDGE_VARIANCE = 4;

/** What stays the same for all steps of one search. */
export interface Search {
  readonly families: readonly Family[];
  readonly length: number;
  readonly width: number;
  /** Variance of what each bay adds to the slope, (mm/m)2. */
  readonly fan: number;
  readonly logFirst: number;
  readonly logJoist: number;
  readonly logDoubled: number;
  readonly repeated: number;
}

/** A reading as a step sees it: where it says that a joist's middle is, how many widths off it was, and on which line, m. */
export interface Aim {
  readonly reading: number;
  readonly value: number;
  readonly off: number;
  readonly v: number;
  readonly variance: number;
}

const { SCORE, A, T, B, AA, AT, AB, TT, TB, BB, OFF } = OF_STATE;
const { FAMILY, JOIST, MARKED, LAST, FIRST, PLACED, DOUBLES } = OF_FACTS;

/** The walk with its first reading on a joist. */
export function beginWalk(to: Walks, from: Walks, walk: number, aim: Aim, search: Search): void {
  const row = addCopy(to, from, walk);
  if (row < 0) return;
  const state = row * STATE;
  const slope = to.state[state + BB];
  to.state[state + SCORE] += search.logFirst;
  to.state[state + A] = aim.value;
  to.state[state + AA] = aim.variance + STRAYING * STRAYING + aim.v * aim.v * slope;
  to.state[state + AB] = -aim.v * slope;
  to.state[state + OFF] = aim.off;
  const facts = row * FACTS;
  to.facts[facts + MARKED] = 1;
  to.facts[facts + FIRST] = aim.reading;
  to.facts[facts + LAST] = aim.reading;
  to.facts[facts + PLACED] = 1;
  to.facts[facts + DOUBLES] = 0;
}

/** The walk with the reading on the joist `bays` further on, if it is not too far from there: one step of a Kalman filter. */
export function stepWalk(to: Walks, from: Walks, walk: number, bays: number, aim: Aim, doubles: boolean, search: Search): void {
  const s = from.state;
  const at = walk * STATE;
  const irregular = search.families[from.facts[walk * FACTS + FAMILY]].kind === 'irregular';
  const straying = irregular ? IRREGULAR_STRAYING : STRAYING;
  const drift = irregular ? irregularDrift(search, from.facts[walk * FACTS + FAMILY]) : DRIFT;
  const far = Math.abs(bays);
  const { v } = aim;
  const ap = s[at + A] + bays * s[at + T];
  const atp = s[at + AT] + bays * s[at + TT];
  const aap = s[at + AA] + bays * (s[at + AT] + atp) + drift * drift * far;
  const abp = s[at + AB] + bays * s[at + TB];
  const bbp = s[at + BB] === 0 ? 0 : s[at + BB] + search.fan * far;
  const ha = aap + v * abp;
  const ht = atp + v * s[at + TB];
  const hb = abp + v * bbp;
  const variance =
    ha +
    v * hb +
    aim.variance +
    straying * straying +
    (aim.off === 0 ? 0 : EDGE_VARIANCE) +
    (doubles ? (search.width * search.width) / 4 : 0);
  const residual = aim.value - ap - v * s[at + B];
  if (residual * residual > GATE * GATE * variance) return;
  const t = s[at + T] + (ht / variance) * residual;
  if (t < SPACING_LIMITS.least || t > SPACING_LIMITS.greatest) return;
  const row = addCopy(to, from, walk);
  if (row < 0) return;
  const n = to.state;
  const out = row * STATE;
  const marked = from.facts[walk * FACTS + MARKED];
  const choice = bays === 0 ? search.repeated / marked : (1 - search.repeated) / Math.max(1, search.length / t - marked);
  n[out + SCORE] +=
    search.logJoist +
    (doubles ? search.logDoubled : 0) +
    (logarithm((choice * choice) / variance) - (residual * residual) / variance) / 2;
  n[out + A] = ap + (ha / variance) * residual;
  n[out + T] = t;
  n[out + B] = s[at + B] + (hb / variance) * residual;
  n[out + AA] = aap - (ha * ha) / variance;
  n[out + AT] = atp - (ha * ht) / variance;
  n[out + AB] = abp - (ha * hb) / variance;
  n[out + TT] = s[at + TT] - (ht * ht) / variance;
  n[out + TB] = s[at + TB] - (ht * hb) / variance;
  n[out + BB] = bbp - (hb * hb) / variance;
  n[out + OFF] = aim.off;
  const facts = row * FACTS;
  to.facts[facts + JOIST] += bays;
  if (bays !== 0) to.facts[facts + MARKED] += 1;
  to.facts[facts + LAST] = aim.reading;
  to.facts[facts + PLACED] = 1;
  to.facts[facts + DOUBLES] = doubles ? 1 : 0;
}

function irregularDrift({ families }: Search, family: number): number {
  const { drift } = families[family];
  return drift[drift.length - 1];
}
