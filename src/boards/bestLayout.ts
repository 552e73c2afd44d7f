import type { LaidRows } from './laidRows.js';
import { canBeStaggered, leastByPairs } from './leastByPairs.js';
import { namesFor, type ObjectiveName } from './objectives.js';
import type { Steps } from './packKinds.js';
import type { PlacementProblem } from './placementProblem.js';
import { provenBoards } from './provenBoards.js';
import { type QuickLook, quickBound, quickLayouts } from './quickLook.js';
import { type Cap, PARTS, type Relaxation, relax, solve } from './relaxation.js';
import { rowSets } from './rowSets.js';
import { type RowSpace, rowSpace } from './rowSpace.js';
import { searchRows } from './searchRows.js';
import type { UsualPrices } from './usualPrices.js';

/** The best layout of all divisions into rows, and what is known of it. */
export interface BestLayout {
  readonly space: RowSpace;
  readonly laid: LaidRows;
  /** Per objective: what it comes to, and whether it can be no less, those before it being what they are. */
  readonly values: readonly number[];
  readonly proven: readonly boolean[];
}

/** One division into rows while the objectives are gone through. */
interface Candidate {
  readonly space: RowSpace;
  readonly look: QuickLook;
  /** Under the objective at hand: no layout within the caps is below. */
  least: number;
  /** Whether the programme has been asked. */
  asked: boolean;
  root: Relaxation | undefined;
  sharp: boolean;
  /** What asks for most boards, and how many; nothing where a search found that fewer will not do. */
  proof: { readonly prices: UsualPrices | undefined; readonly boards: number };
}

/** Steps of a whole search; more where the rows are given, for then all of them go to one question. */
const STEPS = 300_000;
const STEPS_ON_GIVEN_ROWS = 500_000;
/** Steps for one question: at first, for the next better layout, and where neither settled it. */
const STEPS_AT_FIRST = 3_000;
const STEPS_OF_STEP = 40_000;
const STEPS_OF_PROOF = 120_000;
/** Steps for all objectives that come after the butt joints. */
const STEPS_AFTER_JOINTS = 12_000;
/** Beyond this no objective is asked for. */
const MOST = 10_000;
const WORK = 30_000;

/** What the search for the best layout came to. */
export interface Outcome {
  /** Nothing where no layout keeps the rules, or none was found in time. */
  readonly best: BestLayout | undefined;
  /** No layout has fewer boards. */
  readonly bound: number;
  /** Whether no layout of as many boards has fewer butt joints. */
  readonly jointsProven: boolean;
  /** For each division into rows: what proves that no layout on it has fewer boards. */
  readonly proofs: readonly Proof[];
  /** Other layouts that come to no more in any objective, between which lengths, cuts and stagger may choose. */
  readonly others: readonly Pick<BestLayout, 'space' | 'laid'>[];
}

/** Prices, or that a search found nothing. */
export interface Proof {
  readonly space: RowSpace;
  readonly prices: UsualPrices | undefined;
}

/** What an objective may come to at most. */
export interface Limit {
  readonly name: ObjectiveName;
  readonly most: number;
}

/** The best layout by a preference, or by the objectives named, first thing first; with some of them limited from the start. */
export function bestLayout(
  problem: PlacementProblem,
  names: readonly ObjectiveName[] = namesFor(problem),
  limits: readonly Limit[] = [],
): Outcome {
  const steps: Steps = { left: problem.request.budget ?? (problem.rowWidths === undefined ? STEPS : STEPS_ON_GIVEN_ROWS) };
  const all = rowSets(problem)
    .map((set) => rowSpace(problem, set, names))
    .filter((space) => !space.least.includes(Infinity) && canBeStaggered(space) !== false)
    .map((space): Candidate => {
      const look = quickBound(space);
      const proof = { prices: look.prices[0], boards: look.boards };
      return { space, look, proof, least: 0, asked: false, root: undefined, sharp: false };
    });
  if (all.length === 0) return { best: undefined, bound: Infinity, jointsProven: false, proofs: [], others: [] };
  const [{ space }] = all;
  const indexOf = (name: ObjectiveName): number => space.objectives.findIndex((each) => each.name === name);
  const caps: Cap[] = limits.map(({ name, most }) => ({ objective: indexOf(name), most }));
  const proven: boolean[] = [];
  let candidates = all;
  let best: Layout | undefined;
  let bound: number | undefined;
  for (let objective = 0; objective < space.objectives.length; objective++) {
    // What comes after the butt joints is not worth a long search.
    if (objective > indexOf('joints') && indexOf('joints') >= 0) steps.left = Math.min(steps.left, STEPS_AFTER_JOINTS);
    const { found, sure, least } = minimise(candidates, objective, caps, best, steps);
    if (objective === indexOf('boards') && caps.length === 0) bound = least;
    if (found === undefined) return { best: undefined, bound: least, jointsProven: false, proofs: [], others: [] };
    best = found;
    proven.push(sure);
    const value = best.values[objective];
    caps.push({ objective, most: value });
    candidates = candidates.filter((each) => each.least <= value);
  }
  if (best === undefined) return { best, bound: Infinity, jointsProven: false, proofs: [], others: [] };
  const boards = best.values[indexOf('boards')];
  bound ??= leastBoards(all, indexOf('boards'), boards);
  const proofs = all.map(({ space: rows, proof }) => ({
    space: rows,
    prices: proof.boards >= (bound ?? 0) ? proof.prices : undefined,
  }));
  return {
    best: { ...best, proven },
    bound,
    jointsProven: bound === boards && proven[indexOf('joints')],
    proofs,
    others: othersWithin(candidates, caps),
  };
}

/** Divisions into rows, and layouts on each, that are looked at where all objectives are equal. */
const MOST_DIVISIONS = 2;
const MOST_OTHERS = 24;

function othersWithin(candidates: readonly Candidate[], caps: readonly Cap[]): Layout[] {
  const found: Layout[] = [];
  for (const { space, look } of candidates.slice(0, MOST_DIVISIONS)) {
    const joints = space.objectives.findIndex(({ name }) => name === 'joints');
    const boards = space.objectives.findIndex(({ name }) => name === 'boards');
    const most = caps.find(({ objective }) => objective === boards)?.most ?? Infinity;
    for (const first of joints < 0 ? [undefined] : [undefined, joints]) {
      for (const laid of quickLayouts(space, look, first, most)) {
        if (found.length >= MOST_OTHERS) break;
        const values = valuesOf(space, laid);
        if (caps.every((cap) => values[cap.objective] <= cap.most)) found.push({ space, laid, values });
      }
    }
  }
  return found;
}

/** What no layout's boards are below, whatever comes first in the order of preference. */
function leastBoards(candidates: readonly Candidate[], objective: number, boards: number): number {
  let least = boards;
  for (const candidate of candidates) {
    candidate.least = candidate.space.least[objective];
    candidate.root = undefined;
    candidate.least = Math.max(candidate.least, candidate.look.boards);
    if (candidate.least < least) boundBelow(candidate, objective, [], least - 1);
    least = Math.min(least, candidate.least);
  }
  return least;
}

/** A better layout than the known one, where a quick look at all rows finds one. */
function quickest(
  candidates: readonly Candidate[],
  objective: number,
  caps: readonly Cap[],
  known: Layout | undefined,
): Layout | undefined {
  let best = known;
  const lowest = Math.min(...candidates.map(({ least }) => least));
  for (const { space, look } of candidates) {
    if (best !== undefined && best.values[objective] <= lowest) break;
    best = quickBetter(space, look, objective, caps, (best?.values[objective] ?? Infinity) - 1) ?? best;
  }
  return best;
}

/** The best of the layouts that prices lead to at once, within the caps and no more than `most`. */
function quickBetter(
  space: RowSpace,
  look: QuickLook,
  objective: number,
  caps: readonly Cap[],
  most: number,
): Layout | undefined {
  const boards = space.objectives.findIndex(({ name }) => name === 'boards');
  const cap = caps.find((each) => each.objective === boards)?.most ?? (objective === boards ? most : Infinity);
  let best: Layout | undefined;
  for (const laid of quickLayouts(space, look, objective === boards ? undefined : objective, cap)) {
    const values = valuesOf(space, laid);
    if (values[objective] > Math.min(most, (best?.values[objective] ?? Infinity) - 1)) continue;
    if (caps.every((each) => values[each.objective] <= each.most)) best = { space, laid, values };
  }
  return best;
}

interface Layout {
  readonly space: RowSpace;
  readonly laid: LaidRows;
  readonly values: readonly number[];
}

function minimise(
  candidates: readonly Candidate[],
  objective: number,
  caps: readonly Cap[],
  known: Layout | undefined,
  steps: Steps,
): { readonly found: Layout | undefined; readonly sure: boolean; readonly least: number } {
  for (const each of candidates) {
    const ofBoards = Math.min(...each.space.objectives[objective].boards) * each.look.boards;
    each.least = each.space.least[objective] + ofBoards;
    each.asked = false;
    each.sharp = false;
  }
  let found = quickest(candidates, objective, caps, known);
  const lowest = (): number => Math.min(...candidates.map(({ least }) => least));
  const isDone = (): boolean => found !== undefined && lowest() >= found.values[objective];
  const ask = (most: number, round: number): Layout | undefined =>
    firstWithin(candidates, objective, caps, most, { round, steps });
  const upwards = (round: number): void => {
    for (let most = lowest(); !isDone() && most < (found?.values[objective] ?? Infinity); most = Math.max(most + 1, lowest())) {
      if (steps.left <= 0 || most > MOST) return;
      const laid = ask(most, round);
      if (laid === undefined) continue;
      found = laid;
      return;
    }
  };
  upwards(STEPS_AT_FIRST);
  // What is little better than the known one is easier to find than the best.
  while (found !== undefined && !isDone() && steps.left > 0) {
    const better = ask(found.values[objective] - 1, STEPS_OF_STEP);
    if (better === undefined) break;
    found = better;
  }
  upwards(STEPS_OF_PROOF);
  const least = Math.min(lowest(), found?.values[objective] ?? Infinity);
  return { found, sure: found === undefined ? lowest() === Infinity : isDone(), least };
}

function firstWithin(
  candidates: readonly Candidate[],
  objective: number,
  caps: readonly Cap[],
  most: number,
  { round, steps }: { readonly round: number; readonly steps: Steps },
): Layout | undefined {
  for (const candidate of candidates) {
    if (candidate.least > most) continue;
    if (!candidate.asked) {
      const priced = boundBelow(candidate, objective, caps, most);
      steps.left -= candidate.root?.work ?? 0;
      if (candidate.least > most) continue;
      const quick = quickBetter(candidate.space, mixedWith(candidate, priced), objective, caps, most);
      if (quick !== undefined) return quick;
    }
    const allowed = { left: Math.min(round, steps.left) };
    const before = allowed.left;
    if (round > STEPS_AT_FIRST) sharpen(candidate, objective, caps);
    const answer = searchRows(candidate.space, { objective, most, caps }, candidate.root as Relaxation, allowed);
    steps.left -= before - allowed.left;
    if (answer === 'none') {
      candidate.least = most + 1;
    } else if (answer !== 'unknown') return { space: candidate.space, laid: answer, values: valuesOf(candidate.space, answer) };
  }
  return undefined;
}

/** The prices of the programme, alone and mixed with those known beforehand. */
function mixedWith({ look }: Candidate, priced: UsualPrices): QuickLook {
  const whole = Math.max(...priced.boards, 1);
  const mixed = look.prices.map((each): UsualPrices => {
    const most = Math.max(...each.boards);
    return { kinds: each.kinds.map((value, kind) => value / most + priced.kinds[kind] / whole), boards: [2] };
  });
  return { ...look, prices: [priced, ...mixed] };
}

/** A long search is led by the best prices, and not only by those that were enough for a whole number. */
function sharpen(candidate: Candidate, objective: number, caps: readonly Cap[]): void {
  if (candidate.sharp) return;
  candidate.sharp = true;
  candidate.root = relax(candidate.space, objective, caps);
  solve(candidate.root, WORK, Infinity, 'best');
}

/** The best that the programme can say. */
function boundBelow(candidate: Candidate, objective: number, caps: readonly Cap[], enough: number): UsualPrices {
  candidate.asked = true;
  candidate.root = relax(candidate.space, objective, caps, candidate.root);
  const { space, root } = candidate;
  const { bound, arcs, least, kinds, boards } = solve(root, WORK, enough + 1e-3, 'whole');
  // The same prices, with neighbouring rows kept apart two by two.
  const apart = leastByPairs(space, space.sorts, (sort) => arcs[sort.group]);
  const alone = space.groups.reduce((sum, { count }, at) => sum + count * least[at], 0);
  const proven = apart === undefined ? bound : bound - alone + Math.max(alone, apart);
  candidate.least = Math.max(candidate.least, Math.ceil(proven / PARTS));
  if (space.objectives[objective].name === 'boards') {
    // More boards than pieces: there are not enough of some stock.
    if (candidate.least > root.mostBoards) candidate.least = Infinity;
    const asked = caps.length === 0 ? provenBoards(space, { kinds, boards }) : 0;
    if (asked > candidate.proof.boards) candidate.proof = { prices: { kinds, boards }, boards: asked };
  }
  return { kinds, boards };
}

function valuesOf({ objectives }: RowSpace, { paths, packed }: LaidRows): number[] {
  return objectives.map(({ fixed, boards }, at) => {
    const ofBoards = packed.reduce((sum, { stock }) => sum + boards[stock], 0);
    return paths.reduce((sum, path) => sum + path.costs[at], fixed + ofBoards);
  });
}
