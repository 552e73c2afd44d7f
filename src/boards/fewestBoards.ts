import type { Laid } from './laid.js';
import type { RowsBound } from './layoutSpace.js';
import type { BoardLimits } from './packKinds.js';
import { type Answer, anyBoards, ask, bestOf, isLaid, type Question, type Search } from './search.js';

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
 * The fewest boards, and with those the fewest butt joints. Numbers of boards are tried upwards from what the weighings ask
 * for, so that each number that fails is one more that is known to be too few.
 */
export function fewestBoards(search: Search, within: Question = {}): Found {
  const { problem } = search;
  const spare = someLayout(search, within);
  if (spare === 'none') return { laid: undefined, bound: Infinity, jointsProven: false };
  const most = Math.min(spare?.boards.length ?? Infinity, available(search));
  let bound = search.candidates[0].bound;
  let sure = true;
  for (let boards = bound; boards <= most; boards++) {
    const candidates = search.candidates.filter((rows) => rows.bound <= boards);
    const found = fewestJoints(search, candidates, { ...within, boards: anyBoards(search, boards) });
    if (found.laid !== undefined) {
      const laid = problem.stocks.length > 1 ? leastArea(search, candidates, found.laid, within) : found.laid;
      return { laid, bound, jointsProven: sure && found.sure && laid === found.laid };
    }
    sure = sure && found.sure;
    if (sure) bound = boards + 1;
  }
  return { laid: spare, bound: spare === undefined && sure ? Infinity : bound, jointsProven: false };
}

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
/** Butt joints added one at a time before it is asked whether any number of them would do. */
const JOINTS_FIRST = 2;
/** Divisions into rows that do equally well in boards and joints, and steps to find that out. */
const MOST_COMPARED = 2;
const STEPS_OF_COMPARISON = 300;

/** What a search for butt joints found, and whether nothing with fewer can have been missed. */
export interface FewestJoints {
  readonly laid: Laid | undefined;
  readonly sure: boolean;
}

/** The fewest butt joints on any of these rows within what is asked. */
export function fewestJoints(search: Search, candidates: readonly RowsBound[], question: Question): FewestJoints {
  const least = Math.min(...candidates.map(({ joints }) => joints));
  let sure = true;
  for (let joints = least; joints <= least + JOINTS_FIRST; joints++) {
    const found = withJoints(search, candidates, { ...question, joints });
    sure &&= found.sure;
    if (found.laid !== undefined) return { laid: found.laid, sure };
  }
  const answers = candidates.map((rows): readonly [RowsBound, Answer] => [rows, ask(search, rows, question)]);
  const spare = bestOf(search, answers.map(([, answer]) => answer).filter(isLaid));
  if (spare === undefined) return { laid: undefined, sure: answers.every(([, answer]) => answer === 'none') };
  const left = answers.filter(([, answer]) => answer !== 'none').map(([rows]) => rows);
  for (let joints = least + JOINTS_FIRST + 1; joints < spare.measures.joints; joints++) {
    const found = withJoints(search, left, { ...question, joints });
    sure &&= found.sure;
    if (found.laid !== undefined) return { laid: found.laid, sure };
  }
  return { laid: spare, sure };
}

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

/** Sets of boards that are tried. */
const MOST_MIXES = 200;
const STEPS_OF_MIX = 2000;

/** As many boards as a layout has, but less area where that is possible. */
function leastArea(search: Search, candidates: readonly RowsBound[], laid: Laid, within: Question): Laid {
  const { stocks } = search.problem;
  const mixes = mixesOf(search, laid.boards.length)
    .map((mix) => ({ mix, area: mix.available.reduce((sum, count, stock) => sum + count * stocks[stock].area, 0) }))
    .filter(({ area }) => area < laid.measures.area)
    .sort((a, b) => a.area - b.area)
    .slice(0, MOST_MIXES);
  for (const { mix } of mixes) {
    const able = candidates.filter((rows) => isLaid(ask(search, rows, { ...within, boards: mix }, STEPS_OF_MIX)));
    if (able.length === 0) continue;
    return fewestJoints(search, able, { ...within, boards: mix }).laid ?? laid;
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
