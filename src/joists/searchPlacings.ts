import type { Assumptions } from './assumptions.js';
import { logarithm } from './exponential.js';
import { type Family, SPACING_LIMITS } from './families.js';
import type { Place, Placing } from './placing.js';
import type { Reading, Sight } from './readings.js';
import { type Aim, beginWalk, type Search, stepWalk } from './stepWalk.js';
import { thinned } from './thinWalks.js';
import { addCopy, FACTS, OF_FACTS, OF_STATE, roomFor, STATE, type Walks } from './walks.js';

/** Walks that one reading may leave before the best are picked. */
const ROOM = 1000;
/** Bays that are tried back from the last joist and on from it. */
const BACK = 2;
const ON = 40;
/** How far the bays between two readings may be from what the spacing allows, mm. */
const SLACK = 60;
const LOG_ROOT_TWO_PI = 0.9189385332046727;

const { SCORE, A, T, B, TT, BB, OFF } = OF_STATE;
const { FAMILY, JOIST, LAST, FIRST, STEP, PLACED, DOUBLES } = OF_FACTS;

/** What each walk did with each reading: a tree, by step. */
interface History {
  readonly before: number[];
  readonly joist: number[];
  /** `NaN` where the reading was taken for spurious. */
  readonly off: number[];
  readonly doubles: boolean[];
}

/**
 * The ways of placing the readings on joists that are not far behind the best, the best first: each reading is taken for a joist
 * that has been met, for a later one, or for none. The walk goes across the room from reading to reading, family by family.
 */
export function searchPlacings(sight: Sight, families: readonly Family[], width: number, assumptions: Assumptions): Placing[] {
  const length = Math.max(1, sight.far - sight.near);
  const { spurious, repeated, doubled, fan, skewAskew } = assumptions;
  const search: Search = {
    ...{ families, length, width, repeated, fan: fan * fan },
    logFirst: logarithm((1 - spurious) / length),
    logJoist: logarithm(1 - spurious) - LOG_ROOT_TWO_PI,
    logDoubled: logarithm(doubled),
  };
  const logSpurious = logarithm(spurious / length);
  const history: History = { before: [], joist: [], off: [], doubles: [] };
  let walks = firstWalks(families, severalLines(sight.readings) ? skewAskew * skewAskew : 0);
  const next = roomFor(ROOM);
  sight.readings.forEach((reading, index) => {
    next.count = 0;
    for (let walk = 0; walk < walks.count; walk++) {
      const row = addCopy(next, walks, walk);
      next.state[row * STATE + SCORE] += logSpurious;
      next.facts[row * FACTS + PLACED] = 0;
      next.facts[row * FACTS + DOUBLES] = 0;
      placeReading(next, walks, walk, reading, index, sight, search);
    }
    walks = thinned(next);
    record(walks, history);
  });
  return Array.from({ length: walks.count }, (_, walk) => placingOf(walks, walk, history, families, sight.readings.length));
}

function firstWalks(families: readonly Family[], slope: number): Walks {
  const walks = roomFor(families.length);
  walks.count = families.length;
  families.forEach(({ prior, spacing, spread }, family) => {
    const state = family * STATE;
    walks.state[state + SCORE] = logarithm(prior);
    walks.state[state + T] = spacing;
    walks.state[state + TT] = spread * spread;
    walks.state[state + BB] = slope;
    const facts = family * FACTS;
    walks.facts[facts + FAMILY] = family;
    walks.facts[facts + LAST] = -1;
    walks.facts[facts + FIRST] = -1;
    walks.facts[facts + STEP] = -1;
  });
  return walks;
}

/** Whether the readings lie on lines far enough apart to show which way the joists run. */
function severalLines(readings: readonly Reading[]): boolean {
  const along = readings.map(({ v }) => v);
  return along.length > 1 && Math.max(...along) - Math.min(...along) > 0.3;
}

/** Every way in which one walk can take a reading for a joist. */
function placeReading(
  next: Walks,
  walks: Walks,
  walk: number,
  reading: Reading,
  index: number,
  sight: Sight,
  search: Search,
): void {
  const off = reading.edge / 2;
  const { v, variance } = reading;
  const aim: Aim = { reading: index, value: reading.u - sight.near - off * search.width, off, v, variance };
  const last = walks.facts[walk * FACTS + LAST];
  if (last < 0) {
    beginWalk(next, walks, walk, aim, search);
    return;
  }
  const { least, most } = baysBetween(walks, walk, aim);
  for (let bays = least; bays <= most; bays++) stepWalk(next, walks, walk, bays, aim, false, search);
  const apart = doubledAt(walks, walk, reading, sight.readings[last], search.width);
  if (apart === undefined) return;
  const both: Aim = { ...aim, value: apart - sight.near, off: reading.edge === 0 ? 0.5 : 1 };
  stepWalk(next, walks, walk, 0, both, true, search);
}

/** Numbers of bays from the walk's joist to the joists that the reading may be on. */
function baysBetween(walks: Walks, walk: number, aim: Aim): { least: number; most: number } {
  const at = walk * STATE;
  const { state } = walks;
  const gap = aim.value - state[at + A] - aim.v * state[at + B];
  const sd = Math.sqrt(state[at + TT]);
  const shortest = Math.max(SPACING_LIMITS.least, state[at + T] - 4 * sd);
  const longest = Math.min(SPACING_LIMITS.greatest, state[at + T] + 4 * sd);
  return {
    least: Math.max(-BACK, Math.floor((gap - SLACK) / (gap > 0 ? longest : shortest))),
    most: Math.min(ON, Math.ceil((gap + SLACK) / (gap > 0 ? shortest : longest))),
  };
}

/** The value that places a reading on the second timber of a doubled joist whose first timber was read last. */
function doubledAt(walks: Walks, walk: number, reading: Reading, last: Reading, width: number): number | undefined {
  const facts = walk * FACTS;
  if (walks.facts[facts + PLACED] === 0 || walks.facts[facts + DOUBLES] === 1 || last.edge === 1) return undefined;
  if (reading.edge !== -last.edge) return undefined;
  const expected = reading.edge === 0 ? width : 2 * width;
  const difference = reading.u - last.u - expected - (reading.v - last.v) * walks.state[walk * STATE + B];
  const allowed = 4 * Math.sqrt(reading.variance + last.variance) + width / 6;
  if (Math.abs(difference) > allowed) return undefined;
  return reading.edge === 0 ? reading.u : reading.u - width / 2;
}

/** Writes down what the walks that go on did with the newest reading. */
function record(walks: Walks, history: History): void {
  for (let walk = 0; walk < walks.count; walk++) {
    const facts = walk * FACTS;
    history.before.push(walks.facts[facts + STEP]);
    history.joist.push(walks.facts[facts + JOIST]);
    history.off.push(walks.facts[facts + PLACED] === 1 ? walks.state[walk * STATE + OFF] : Number.NaN);
    history.doubles.push(walks.facts[facts + DOUBLES] === 1);
    walks.facts[facts + STEP] = history.before.length - 1;
  }
}

function placingOf(walks: Walks, walk: number, history: History, families: readonly Family[], count: number): Placing {
  const places: Place[] = new Array(count).fill(null);
  const doubled: number[] = [];
  let step = walks.facts[walk * FACTS + STEP];
  let second = false;
  for (let i = count - 1; i >= 0; i--) {
    const [joist, off] = [history.joist[step], history.off[step]];
    // The first timber of a doubled joist was read as if it stood alone.
    if (!Number.isNaN(off)) places[i] = { joist, off: second ? off - 0.5 : off };
    second = history.doubles[step];
    if (second) doubled.push(joist);
    step = history.before[step];
  }
  return { family: families[walks.facts[walk * FACTS + FAMILY]], places, doubled: doubled.reverse() };
}
