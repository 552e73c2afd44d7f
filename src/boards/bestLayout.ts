import { boundBelow, type Candidate, candidateOf, type Layout, turnTo, valuesOf } from './candidate.js';
import { areAllSearched, type OnAnyRows, onAnyRows } from './holdsOnAnyRows.js';
import { minimise } from './minimise.js';
import { namesFor, type ObjectiveName } from './objectives.js';
import type { Steps } from './packKinds.js';
import type { PlacementProblem } from './placementProblem.js';
import { quickLayouts } from './quickLook.js';
import type { Cap } from './relaxation.js';
import { type RowLayout, rowLayouts } from './rowLayouts.js';
import type { RowSpace } from './rowSpace.js';
import { rowSpaces } from './rowSpaces.js';
import { nameOf } from './rowsBetween.js';
import type { UsualPrices } from './usualPrices.js';

/** The best layout of all divisions into rows, and what is known of it. */
export interface BestLayout extends Layout {
  /** Per objective: whether it can be no less, those before it being what they are. */
  readonly proven: readonly boolean[];
}

/** Steps of a whole search; more where there are other divisions than those that are searched first, or where the rows are given. */
const STEPS = 300_000;
const STEPS_ON_ANY_ROWS = 600_000;
const STEPS_ON_GIVEN_ROWS = 500_000;
/** Steps for the butt joints where they do not come first, at least and at most, and for each division: not worth a long search. */
const STEPS_OF_JOINTS = { least: 40_000, most: 250_000 };
const STEPS_OF_DIVISION = 20_000;
/** Steps for each objective that comes after them, and at the least also where those before have used up the rest. */
const STEPS_AFTER_JOINTS = 12_000;
const STEPS_AT_LEAST = 4000;

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

/** A search for the best layout, and all that may be asked of it. */
interface Searched {
  readonly best: BestLayout | undefined;
  /** No layout has fewer boards, or, where none was found, comes to less by the objective asked for last; nothing where that is not known. */
  readonly least: number | undefined;
  /** What no layout's boards are below on each division, where the boards were asked for first. */
  readonly leasts: Leasts;
  /** All divisions, and those on which the best layout may be. */
  readonly all: readonly Candidate[];
  readonly candidates: readonly Candidate[];
  readonly caps: readonly Cap[];
  readonly anyRows: OnAnyRows | undefined;
}

type Leasts = ReadonlyMap<Candidate, number>;

const leastsOf = (candidates: readonly Candidate[]): Leasts => new Map(candidates.map((each) => [each, each.least]));

function searched(
  problem: PlacementProblem,
  names: readonly ObjectiveName[],
  limits: readonly Limit[],
  on: readonly RowLayout[] = [],
): Searched {
  const budget = problem.request.budget ?? usualSteps(problem);
  const steps: Steps = { left: budget };
  const toBuy = problem.stocks.reduce((sum, { board }) => sum + (board.atHand ? 0 : (board.available ?? Infinity)), 0);
  const candidatesOn = (more: readonly RowLayout[] = []): Candidate[] =>
    rowSpaces(problem, names, more)
      .map(candidateOf)
      .filter(({ look }) => look.boards <= toBuy);
  let all = candidatesOn(on);
  if (all.length === 0) all = candidatesOn(rowLayouts(problem, true));
  const caps: Cap[] = limits.map(({ name, most }) => ({ objective: names.indexOf(name), most }));
  let leasts: Leasts = new Map();
  if (all.length === 0) return { best: undefined, least: Infinity, leasts, all, candidates: all, caps, anyRows: undefined };
  const anyRows = onAnyRows(
    problem,
    all.map(({ space }) => space.set.layout),
    budget,
  );
  const othersBelow = (value: number): Candidate[] => {
    const left = caps.length > 0 ? [] : anyRows.leftFor(value);
    return left.length > 0 ? candidatesOn(left) : [];
  };
  const boards = names.indexOf('boards');
  const proven: boolean[] = [];
  let candidates = [...all];
  let best: Layout | undefined;
  let bound: number | undefined;
  for (const objective of names.keys()) {
    const { least: reserved, most } = stepsFor(problem, names, objective, all.length);
    steps.left = Math.min(Math.max(steps.left, Math.min(reserved, budget)), most);
    const beside = objective === boards ? { isLeast: anyRows.takes, othersBelow } : undefined;
    const { found, sure, least } = minimise(candidates, { objective, caps: [...caps] }, best, steps, beside);
    if (objective === boards && caps.length === 0) {
      all = [...candidates];
      bound = least;
      leasts = leastsOf(all);
    }
    if (found === undefined) return { best: undefined, least, leasts, all, candidates, caps, anyRows };
    best = found;
    proven.push(sure);
    const value = best.values[objective];
    caps.push({ objective, most: value });
    candidates = candidates.filter((each) => each.least <= value);
  }
  return { best: best && { ...best, proven }, least: bound, leasts, all, candidates, caps, anyRows };
}

/** The best layout alone, without what is proven of it; on the usual divisions, or on these. */
export const bestAlone = (
  problem: PlacementProblem,
  names: readonly ObjectiveName[],
  limits: readonly Limit[] = [],
  on: readonly RowLayout[] = [],
): BestLayout | undefined => searched(problem, names, limits, on).best;

/** The best layout by a preference, or by the objectives named, first thing first; with some of them limited from the start. */
export function bestLayout(
  problem: PlacementProblem,
  names: readonly ObjectiveName[] = namesFor(problem),
  limits: readonly Limit[] = [],
): Outcome {
  const { best, least, leasts, all, candidates, caps, anyRows } = searched(problem, names, limits);
  if (best === undefined || anyRows === undefined)
    return { best: undefined, bound: least ?? Infinity, jointsProven: false, proofs: [], others: [] };
  const [boards, joints] = [names.indexOf('boards'), names.indexOf('joints')];
  const fewest = best.values[boards];
  let bound = least ?? leastBoards(all, boards, fewest);
  // Rows that are not among those searched may do with fewer.
  const known = knownBoards(problem, names, leasts.size > 0 ? leasts : leastsOf(all));
  if (limits.length === 0 && Number.isFinite(bound)) while (!anyRows.takesBeside(bound, (rows) => known(rows) >= bound)) bound--;
  const proofs = all.map(({ space: rows, proof }) => ({ space: rows, prices: proof.boards >= bound ? proof.prices : undefined }));
  return {
    best,
    bound,
    jointsProven: bound === fewest && best.proven[joints] && anyRows.hasJointsBeside(best.values[joints]),
    proofs,
    others: othersWithin(candidates, caps),
  };
}

/** What no layout's boards are below on a division; of one that is not kept, since it leaves slivers or cannot be laid, Infinity. */
function knownBoards(problem: PlacementProblem, names: readonly ObjectiveName[], leasts: Leasts): (rows: RowLayout) => number {
  const known = new Map([...leasts].map(([{ space }, least]) => [nameOf(space.set.layout), least]));
  return (rows) => {
    const least = known.get(nameOf(rows)) ?? (rowSpaces(problem, names, [rows]).length === 0 ? Infinity : 0);
    known.set(nameOf(rows), least);
    return least;
  };
}

function usualSteps(problem: PlacementProblem): number {
  if (problem.rowWidths !== undefined) return STEPS_ON_GIVEN_ROWS;
  return problem.parts.length > 1 || areAllSearched(problem) ? STEPS : STEPS_ON_ANY_ROWS;
}

/** Steps for an objective on so many divisions. */
function stepsFor(
  { rowWidths, request }: PlacementProblem,
  names: readonly ObjectiveName[],
  objective: number,
  divisions: number,
): { readonly least: number; readonly most: number } {
  const joints = names.indexOf('joints');
  const share = Math.max(1, (request.budget ?? STEPS) / STEPS);
  if (joints < 0 || objective < joints) return { least: 0, most: Infinity };
  if (objective > joints) return { least: STEPS_AT_LEAST, most: STEPS_AFTER_JOINTS * share };
  const isShort = joints > 0 && rowWidths === undefined;
  const { least, most } = STEPS_OF_JOINTS;
  return { least, most: isShort ? Math.min(most, Math.max(least, STEPS_OF_DIVISION * divisions)) * share : Infinity };
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
    const joined = caps.find(({ objective }) => objective === joints)?.most ?? Infinity;
    for (const beside of joints < 0 ? [undefined] : [undefined, { objective: joints, most: () => joined }]) {
      for (const laid of quickLayouts(space, look, most, caps, beside)) {
        const values = valuesOf(space, laid);
        if (caps.every((cap) => values[cap.objective] <= cap.most)) found.push({ space, laid, values });
        if (found.length >= MOST_OTHERS) return found;
      }
    }
  }
  return found;
}

/** What no layout's boards are below, whatever comes first in the order of preference. */
function leastBoards(candidates: readonly Candidate[], objective: number, boards: number): number {
  let least = boards;
  for (const candidate of candidates) {
    turnTo(candidate, objective);
    candidate.root = undefined;
    if (candidate.least < least) boundBelow(candidate, { objective, caps: [] }, least - 1);
    least = Math.min(least, candidate.least);
  }
  return least;
}
