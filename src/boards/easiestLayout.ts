import { type Found, someLayout, withJoints } from './fewestBoards.js';
import type { Laid } from './laid.js';
import type { RowsBound } from './layoutSpace.js';
import { anyBoards, ask, isLaid, type Question, type Search, spaceOf } from './search.js';

/**
 * What a person on a ladder would rather lay: first what the rows must not have (pieces too heavy, joints on joists that nobody
 * has seen, poor bearings, narrow rows), then the least sum of twice the boards and the butt joints, equal sums by fewest butt
 * joints.
 */
export function easiestLayout(search: Search): Found {
  const { first, candidates } = leastFirst(search);
  if (candidates.length === 0) return { laid: undefined, bound: Infinity, jointsProven: false };
  const some = someLayout({ ...search, candidates }, { first });
  if (some === undefined || some === 'none') return { laid: undefined, bound: search.candidates[0].bound, jointsProven: false };
  const laid = leastSum(search, candidates, first, some);
  return { laid, bound: boundBelow(search, laid.boards.length), jointsProven: false };
}

/** A layout's sum that people go by. */
const sumOf = ({ measures }: Laid): number => 2 * measures.boards + measures.joints;

/** From some layout on, a smaller sum is asked for until none is found; then the same sum with fewer butt joints. */
function leastSum(search: Search, candidates: readonly RowsBound[], first: number, some: Laid): Laid {
  const leastBoards = Math.min(...candidates.map(({ bound }) => bound));
  const leastJoints = Math.min(...candidates.map(({ joints }) => joints));
  const within = (boards: number, joints: number): Laid | undefined =>
    withJoints(
      search,
      candidates.filter(({ bound }) => bound <= boards),
      { boards: anyBoards(search, boards), joints, first },
      STEPS_OF_SUM,
    ).laid;
  const smaller = (than: Laid): Laid | undefined => {
    const total = sumOf(than) - 1;
    for (let boards = leastBoards; total - 2 * boards >= leastJoints; boards++) {
      const found = within(boards, total - 2 * boards);
      if (found !== undefined) return found;
    }
    return undefined;
  };
  let best = some;
  for (let next = smaller(best); next !== undefined; next = smaller(best)) best = next;
  const total = sumOf(best);
  for (let joints = leastJoints + ((total - leastJoints) % 2); joints <= best.measures.joints; joints += 2) {
    const found = within((total - joints) / 2, joints);
    if (found !== undefined && sumOf(found) <= total) return found;
  }
  return best;
}

const STEPS_OF_SUM = 400;
const STEPS_OF_FIRST = 2000;
const STEPS_OF_BOUND = 1500;

/** The least of what comes first, then the fewest narrow rows; and the rows that can be laid so. */
function leastFirst(search: Search): { first: number; candidates: RowsBound[] } {
  let best: readonly [first: number, narrow: number] = [Infinity, Infinity];
  let found: RowsBound[] = [];
  for (const rows of search.candidates) {
    const narrow = spaceOf(search, rows).narrowRows;
    const first = leastFirstOn(search, rows, narrow > best[1] ? best[0] - 1 : best[0]);
    if (first === undefined) continue;
    if (first < best[0] || narrow < best[1]) {
      best = [first, narrow];
      found = [];
    }
    found.push(rows);
  }
  return { first: best[0], candidates: found };
}

/** The least of what comes first on these rows, where it is no more than `most`. */
function leastFirstOn(search: Search, rows: RowsBound, most: number): number | undefined {
  let best: number | undefined;
  let question: Question = most === Infinity ? {} : { first: most };
  while (true) {
    const answer = ask(search, rows, { first: Number.MAX_SAFE_INTEGER, ...question }, STEPS_OF_FIRST);
    if (!isLaid(answer)) return best;
    best = answer.first;
    if (best === 0) return best;
    question = { first: best - 1 };
  }
}

/** The least number of boards of any layout, as far as a short search can tell. */
function boundBelow(search: Search, boards: number): number {
  const { candidates } = search;
  let bound = candidates[0].bound;
  for (; bound < boards; bound++) {
    const question = { boards: anyBoards(search, bound) };
    const able = candidates.filter((rows) => rows.bound <= bound);
    if (!able.every((rows) => ask(search, rows, question, STEPS_OF_BOUND) === 'none')) break;
  }
  return bound;
}
