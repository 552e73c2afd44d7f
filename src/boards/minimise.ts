import {
  type Aim,
  type Candidate,
  firstWithin,
  type Layout,
  layoutWithin,
  quickBetter,
  STEPS_AT_FIRST,
  sharpened,
  turnTo,
} from './candidate.js';
import type { Steps } from './packKinds.js';
import { redividedRows } from './redividedRows.js';

/** Steps for the next better layout, and where neither that nor a first look settled it. */
const STEPS_OF_STEP = 40_000;
const STEPS_OF_PROOF = 120_000;
/** The least values that are asked for before what is found is bettered. */
const FIRST_ASKED = 2;
/** Beyond this no objective is asked for. */
const MOST = 10_000;

/** What an objective was brought down to. */
export interface Minimised {
  readonly found: Layout | undefined;
  /** Whether it can be no less. */
  readonly sure: boolean;
  readonly least: number;
}

/** What is known of divisions that are not searched. */
export interface Beside {
  /** Whether no layout at all is below a value. */
  readonly isLeast: (value: number) => boolean;
  /** Other divisions on which a layout may be below it. */
  readonly othersBelow: (value: number) => readonly Candidate[];
}

/** Brings an objective down over divisions into rows, to which others may come, beginning with a layout that may be known. */
export function minimise(candidates: Candidate[], aim: Aim, known: Layout | undefined, steps: Steps, beside?: Beside): Minimised {
  const { objective, caps } = aim;
  for (const each of candidates) turnTo(each, objective);
  let found: Layout | undefined;
  let isLeast = false;
  const keep = (layout: Layout | undefined): void => {
    if (layout === found) return;
    found = layout;
    const value = found?.values[objective];
    isLeast = value !== undefined && beside?.isLeast(value) === true;
    if (value === undefined || !isLeast) return;
    for (const each of candidates) each.least = Math.max(each.least, value);
  };
  keep(quickest(candidates, aim, known));
  const lowest = (): number => Math.min(...candidates.map(({ least }) => least));
  const isDone = (): boolean => found !== undefined && lowest() >= found.values[objective];
  let inTurn: readonly Candidate[] = candidates;
  const putInOrder = (): void => {
    if (!isDone() && steps.left > 0) inTurn = likeliestFirst(candidates, aim, (found?.values[objective] ?? Infinity) - 1);
  };
  const ask = (most: number, round: number): Layout | undefined => {
    for (const candidate of inTurn) {
      const laid = layoutWithin(candidate, aim, most, { round, steps });
      if (laid !== undefined) return laid;
    }
    return undefined;
  };
  /** The least values first. */
  const upwards = (round: number, times = Infinity): void => {
    let most = lowest();
    for (let asked = 0; asked < times && !isDone() && most < (found?.values[objective] ?? Infinity); asked++) {
      if (steps.left <= 0 || most > MOST) return;
      const laid = ask(most, round);
      if (laid !== undefined) {
        keep(laid);
        return;
      }
      most = Math.max(most + 1, lowest());
    }
  };
  /** What is little better than the known one is easier to find than the best. */
  const downwards = (round: number): void => {
    while (found !== undefined && !isDone() && steps.left > 0) {
      const better = ask(found.values[objective] - 1, round);
      if (better === undefined) return;
      keep(better);
    }
  };
  const bringOthers = (): void => {
    if (isLeast || beside === undefined) return;
    const others = beside.othersBelow(found?.values[objective] ?? MOST);
    for (const each of others) turnTo(each, objective);
    candidates.push(...others);
    keep(quickest(others, aim, found));
  };
  if (!isDone()) keep(redivided(candidates, aim, found));
  // Where something counts before, few layouts serve, and steps are short: the likeliest rows come first from the start.
  if (caps.length > 0) putInOrder();
  upwards(STEPS_AT_FIRST, FIRST_ASKED);
  downwards(STEPS_AT_FIRST);
  upwards(STEPS_AT_FIRST);
  bringOthers();
  if (!isDone()) keep(redivided(candidates, aim, found));
  putInOrder();
  downwards(STEPS_OF_STEP / 2);
  downwards(STEPS_OF_STEP);
  // All that are left, where there is nothing else to spend them on.
  for (let round = STEPS_OF_PROOF; !isDone() && steps.left > 0; round *= 2) {
    const open = candidates.filter(({ least }) => least < (found?.values[objective] ?? Infinity));
    upwards(Math.max(round, steps.left / open.length));
    if (round > steps.left) break;
  }
  const least = Math.min(lowest(), found?.values[objective] ?? Infinity);
  return { found, sure: found === undefined ? lowest() === Infinity : isDone(), least };
}

/** Those on which fewest would do, if rows and boards could be mixtures, before the others. */
function likeliestFirst(candidates: readonly Candidate[], aim: Aim, most: number): Candidate[] {
  const open = candidates.filter(({ least }) => least <= most);
  if (open.length < 2) return open;
  const asked = new Map(open.map((each) => [each, sharpened(each, aim)]));
  return open.sort((a, b) => (asked.get(a) as number) - (asked.get(b) as number));
}

/** Divisions into rows whose first layouts are divided anew. */
const REDIVIDED = 4;

/** A better layout than the known one, where dividing some rows of it anew comes to less, or of the first layout on other rows. */
function redivided(candidates: readonly Candidate[], aim: Aim, known: Layout | undefined): Layout | undefined {
  const { objective, caps } = aim;
  // What comes first is not known to be within reach on any rows.
  if (known === undefined || caps.length === 0) return known;
  let best = known;
  const others = candidates
    .slice(0, REDIVIDED)
    .filter(({ space, least }) => space !== known.space && least < best.values[objective]);
  for (const candidate of [...candidates.filter(({ space }) => space === known.space), ...others]) {
    const first = candidate.space === known.space ? known : firstWithin(candidate, aim);
    if (candidate.least >= best.values[objective] || first === undefined) continue;
    const better = redividedRows(first, aim, candidate.look.prices);
    if (better.values[objective] < best.values[objective]) best = better;
  }
  return best;
}

/** A better layout than the known one, where a quick look at all rows finds one. */
function quickest(candidates: readonly Candidate[], aim: Aim, known: Layout | undefined): Layout | undefined {
  const { objective } = aim;
  let best = known;
  const lowest = Math.min(...candidates.map(({ least }) => least));
  for (const candidate of candidates) {
    if (best !== undefined && best.values[objective] <= lowest) break;
    best = quickBetter(candidate, aim, (best?.values[objective] ?? Infinity) - 1) ?? best;
  }
  return best;
}
