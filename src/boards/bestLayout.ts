import { boundBelow, type Candidate, candidateOf, type Layout, turnTo, valuesOf } from './candidate.js';
import { type OnAnyRows, onAnyRows } from './holdsOnAnyRows.js';
import { minimise } from './minimise.js';
import { namesFor, type ObjectiveName } from './objectives.js';
import type { Steps } from './packKinds.js';
import type { PlacementProblem } from './placementProblem.js';
import { quickLayouts } from './quickLook.js';
import type { Cap } from './relaxation.js';
import type { RowSpace } from './rowSpace.js';
import { rowSpaces } from './rowSpaces.js';
import type { UsualPrices } from './usualPrices.js';

/** The best layout of all divisions into rows, and what is known of it. */
export interface BestLayout extends Layout {
  /** Per objective: whether it can be no less, those before it being what they are. */
  readonly proven: readonly boolean[];
}

/** Steps of a whole search; more where the rows are given, for then all of them go to one question. */
const STEPS = 300_000;
const STEPS_ON_GIVEN_ROWS = 500_000;
/** Steps for the butt joints where they do not come first, in all and for each division: not worth a long search. */
const STEPS_OF_JOINTS = 40_000;
const STEPS_OF_DIVISION = 10_000;
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
  /** All divisions, and those on which the best layout may be. */
  readonly all: readonly Candidate[];
  readonly candidates: readonly Candidate[];
  readonly caps: readonly Cap[];
  readonly anyRows: OnAnyRows;
}

function searched(problem: PlacementProblem, names: readonly ObjectiveName[], limits: readonly Limit[]): Searched {
  const budget = problem.request.budget ?? (problem.rowWidths === undefined ? STEPS : STEPS_ON_GIVEN_ROWS);
  const steps: Steps = { left: budget };
  const toBuy = problem.stocks.reduce((sum, { board }) => sum + (board.atHand ? 0 : (board.available ?? Infinity)), 0);
  const all = rowSpaces(problem, names)
    .map(candidateOf)
    .filter(({ look }) => look.boards <= toBuy);
  const anyRows = onAnyRows(problem);
  if (all.length === 0) return { best: undefined, least: Infinity, all, candidates: all, caps: [], anyRows };
  const caps: Cap[] = limits.map(({ name, most }) => ({ objective: names.indexOf(name), most }));
  const boards = names.indexOf('boards');
  const proven: boolean[] = [];
  let candidates = all;
  let best: Layout | undefined;
  let bound: number | undefined;
  for (const objective of names.keys()) {
    const { least: reserved, most } = stepsFor(problem, names, objective, all.length);
    steps.left = Math.min(Math.max(steps.left, Math.min(reserved, budget)), most);
    const isLeast = objective === boards ? anyRows.takes : undefined;
    const { found, sure, least } = minimise(candidates, { objective, caps: [...caps] }, best, steps, isLeast);
    if (objective === boards && caps.length === 0) bound = least;
    if (found === undefined) return { best: undefined, least, all, candidates, caps, anyRows };
    best = found;
    proven.push(sure);
    const value = best.values[objective];
    caps.push({ objective, most: value });
    candidates = candidates.filter((each) => each.least <= value);
  }
  return { best: best && { ...best, proven }, least: bound, all, candidates, caps, anyRows };
}

/** The best layout alone, without what is proven of it. */
export const bestAlone = (
  problem: PlacementProblem,
  names: readonly ObjectiveName[],
  limits: readonly Limit[] = [],
): BestLayout | undefined => searched(problem, names, limits).best;

/** The best layout by a preference, or by the objectives named, first thing first; with some of them limited from the start. */
export function bestLayout(
  problem: PlacementProblem,
  names: readonly ObjectiveName[] = namesFor(problem),
  limits: readonly Limit[] = [],
): Outcome {
  const { best, least, all, candidates, caps, anyRows } = searched(problem, names, limits);
  if (best === undefined) return { best, bound: least ?? Infinity, jointsProven: false, proofs: [], others: [] };
  const [boards, joints] = [names.indexOf('boards'), names.indexOf('joints')];
  const fewest = best.values[boards];
  let bound = least ?? leastBoards(all, boards, fewest);
  // Rows that are not among those searched may do with fewer.
  if (limits.length === 0 && Number.isFinite(bound)) while (!anyRows.takesBeside(bound)) bound--;
  const proofs = all.map(({ space: rows, proof }) => ({ space: rows, prices: proof.boards >= bound ? proof.prices : undefined }));
  return {
    best,
    bound,
    jointsProven: bound === fewest && best.proven[joints] && anyRows.hasJointsBeside(best.values[joints]),
    proofs,
    others: othersWithin(candidates, caps),
  };
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
  return { least: 0, most: isShort ? Math.max(STEPS_OF_JOINTS, STEPS_OF_DIVISION * divisions) * share : Infinity };
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
