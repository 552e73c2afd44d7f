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
  const spare = someLayout({ ...search, candidates }, { first });
  const laid = leastSum(search, candidates, first, spare === 'none' ? undefined : spare);
  return { laid, bound: boundBelow(search, laid?.boards.length ?? 0), jointsProven: false };
}

/** A layout's sum that people go by. */
const sumOf = ({ measures }: Laid): number => 2 * measures.boards + measures.joints;

function leastSum(search: Search, candidates: readonly RowsBound[], first: number, spare: Laid | undefined): Laid | undefined {
  const least = Math.min(...candidates.map(({ bound, joints }) => 2 * bound + joints));
  const most = spare === undefined ? least + LONG_SEARCH : sumOf(spare);
  const start = Math.min(...candidates.map(({ joints }) => joints));
  for (let total = least; total <= most; total++) {
    for (let joints = start + ((total - start) % 2); total - joints >= 2; joints += 2) {
      const boards = anyBoards(search, (total - joints) / 2);
      const able = candidates.filter(({ bound }) => bound <= boards.boards);
      const { laid } = withJoints(search, able, { boards, joints, first }, STEPS_OF_SUM);
      if (laid !== undefined) return laid;
    }
  }
  return spare;
}

const LONG_SEARCH = 200;
const STEPS_OF_SUM = 3000;
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
