import type { Laid } from './laid.js';
import type { RowsBound } from './layoutSpace.js';
import type { BoardLimits } from './packKinds.js';
import { type Answer, anyBoards, ask, bestOf, isLaid, type Question, quickLayout, type Search } from './search.js';

/** What a search found. */
export interface Found {
  /** Nothing when no way to lay the room was found. */
  readonly laid: Laid | undefined;
  /** No layout has fewer boards; Infinity when there is none at all. */
  readonly bound: number;
  /** Whether no layout of as many boards has fewer butt joints. */
  readonly jointsProven: boolean;
}

/**
 * The fewest boards, and with those the fewest butt joints. From some layout on, one board less is asked for until it is not
 * found; where it is known that it cannot be, no layout has fewer.
 */
export function fewestBoards(search: Search, within: Question = {}): Found {
  const some = someLayout(search, within);
  if (some === 'none') return { laid: undefined, bound: Infinity, jointsProven: false };
  if (some === undefined) return { laid: undefined, bound: search.candidates[0].bound, jointsProven: false };
  let best = quickest(search, within, some);
  let least = search.candidates[0].bound;
  while (best.boards.length > least) {
    const fewer = withBoards(search, best.boards.length - 1, within);
    if (fewer === 'none') least = best.boards.length;
    if (typeof fewer === 'string') break;
    best = fewer;
  }
  const boards = anyBoards(search, best.boards.length);
  const able = search.candidates.filter((rows) => rows.bound <= boards.boards);
  const { laid, sure } = fewestJoints(search, able, { ...within, boards }, best);
  const smaller = search.problem.stocks.length > 1 ? leastArea(search, able, laid, within) : laid;
  return { laid: smaller, bound: least, jointsProven: sure && smaller === laid };
}

/** A better layout than some, where a quick look at all rows finds one. */
function quickest(search: Search, within: Question, some: Laid): Laid {
  let best = some;
  if (within.first !== undefined) return best;
  for (const rows of search.candidates) {
    if (rows.bound >= best.boards.length) break;
    best = quickLayout(search, rows, best.boards.length) ?? best;
  }
  return best;
}

/** A layout with no more than so many boards; each division into rows gets a few steps first and more then. */
function withBoards(search: Search, boards: number, within: Question): Answer {
  const question = { ...within, boards: anyBoards(search, boards) };
  let open = search.candidates.filter((rows) => rows.bound <= boards);
  if (boards > available(search)) return 'unknown';
  for (const steps of STEPS_OF_ROUND) {
    const unknown: RowsBound[] = [];
    for (const rows of open) {
      const answer = ask(search, rows, question, steps);
      if (isLaid(answer)) return answer;
      if (answer === 'unknown') unknown.push(rows);
    }
    open = unknown;
  }
  return open.length === 0 ? 'none' : 'unknown';
}

const STEPS_OF_ROUND = [300, 2500] as const;

const available = ({ problem }: Search): number =>
  problem.stocks.reduce((sum, { board }) => sum + (board.available ?? Infinity), 0);

/** A layout that keeps the rules, whatever it takes; `none` where it is known that there is none. */
export function someLayout(search: Search, within: Question): Laid | 'none' | undefined {
  let sure = true;
  for (const rows of search.candidates) {
    const answer = ask(search, rows, within, STEPS_OF_ANY);
    if (isLaid(answer)) return answer;
    if (answer === 'unknown') sure = false;
  }
  return sure ? 'none' : undefined;
}

const STEPS_OF_ANY = 5000;
/** Divisions into rows that do equally well in boards and joints, and steps to find that out. */
const MOST_COMPARED = 2;
const STEPS_OF_COMPARISON = 300;

/** What a search for butt joints found, and whether nothing with fewer can have been missed. */
export interface FewestJoints {
  readonly laid: Laid | undefined;
  readonly sure: boolean;
}

/** The fewest butt joints on any of these rows within what is asked; fewer than `spare` has, if that can be. */
export function fewestJoints(
  search: Search,
  candidates: readonly RowsBound[],
  question: Question,
  spare: Laid,
): { readonly laid: Laid; readonly sure: boolean } {
  let sure = true;
  for (let joints = Math.min(...candidates.map((rows) => rows.joints)); joints <= spare.measures.joints; joints++) {
    const found = withJoints(search, candidates, { ...question, joints }, STEPS_OF_JOINTS);
    if (found.laid !== undefined) return { laid: found.laid, sure };
    sure &&= found.sure;
  }
  return { laid: spare, sure };
}

const STEPS_OF_JOINTS = 700;

/** The best of a few layouts with no more than so many butt joints. */
export function withJoints(
  search: Search,
  candidates: readonly RowsBound[],
  question: Question & { readonly joints: number },
  steps?: number,
): FewestJoints {
  const found: Laid[] = [];
  let sure = true;
  for (const rows of candidates) {
    if (rows.joints > question.joints || found.length > MOST_COMPARED) continue;
    const answer = ask(search, rows, question, found.length === 0 ? steps : STEPS_OF_COMPARISON);
    if (isLaid(answer)) found.push(answer);
    else if (answer === 'unknown' && found.length === 0) sure = false;
  }
  return { laid: bestOf(search, found), sure };
}

/** The first layout that is found within what is asked. */
export function firstFound(
  search: Search,
  candidates: readonly RowsBound[],
  question: Question,
  steps: number,
): Laid | undefined {
  for (const rows of candidates) {
    const answer = ask(search, rows, question, steps);
    if (isLaid(answer)) return answer;
  }
  return undefined;
}

/** Sets of boards that are tried. */
const MOST_MIXES = 200;
const STEPS_OF_MIX = 500;

/** As many boards as a layout has, but less area where that is possible. */
function leastArea(search: Search, candidates: readonly RowsBound[], laid: Laid, within: Question): Laid {
  const { stocks } = search.problem;
  const mixes = mixesOf(search, laid.boards.length)
    .map((mix) => ({ mix, area: mix.available.reduce((sum, count, stock) => sum + count * stocks[stock].area, 0) }))
    .filter(({ area }) => area < laid.measures.area)
    .sort((a, b) => a.area - b.area)
    .slice(0, MOST_MIXES);
  for (const { mix } of mixes) {
    const found = firstFound(search, candidates, { ...within, boards: mix }, STEPS_OF_MIX);
    if (found !== undefined) return fewestJoints(search, candidates, { ...within, boards: mix }, found).laid;
  }
  return laid;
}

/** Every set of so many boards from the stocks that there are. */
function mixesOf({ problem }: Search, boards: number): BoardLimits[] {
  let mixes: number[][] = [[]];
  for (const [at, { board }] of problem.stocks.entries()) {
    const last = at === problem.stocks.length - 1;
    mixes = mixes.flatMap((mix) => {
      const left = boards - mix.reduce((sum, count) => sum + count, 0);
      const most = Math.min(left, board.available ?? Infinity);
      if (last) return most === left ? [[...mix, left]] : [];
      return Array.from({ length: most + 1 }, (_, count) => [...mix, count]);
    });
    if (mixes.length > 20_000) return [];
  }
  return mixes.map((counts) => ({ boards, available: counts }));
}
