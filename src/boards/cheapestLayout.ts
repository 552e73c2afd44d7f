import { type Found, fewestBoards, fewestJoints, firstFound } from './fewestBoards.js';
import { type BoardLimits, capacityOf } from './packKinds.js';
import type { PlacementProblem } from './placementProblem.js';
import type { Search } from './search.js';

/** Sets of boards that are tried, and looked at. */
const MOST_TRIED = 300;
const STEPS_OF_MIX = 500;
const MOST_LOOKED_AT = 200_000;

/**
 * The least money, then the fewest boards and the least area, then the fewest butt joints: sets of boards are tried from the
 * cheapest that could be enough upwards.
 */
export function cheapestLayout(search: Search): Found {
  const { problem, candidates } = search;
  const free = fewestBoards(search);
  if (free.laid === undefined || problem.stocks.length === 1) return free;
  const dearest = free.laid.measures.cost;
  let tried = 0;
  for (const mix of mixesByCost(problem, dearest)) {
    const able = candidates.filter((rows) => rows.weighings.every(({ boards, least }) => least <= capacityOf(boards, mix)));
    if (able.length === 0) continue;
    if (tried++ > MOST_TRIED || search.steps.left <= 0) break;
    const found = firstFound(search, able, { boards: mix }, STEPS_OF_MIX);
    if (found === undefined) continue;
    return { laid: fewestJoints(search, able, { boards: mix }, found).laid, bound: free.bound, jointsProven: false };
  }
  return free;
}

/** Sets of boards in the order of their cost, then number, then area, while they cost less than `dearest` or as much. */
function* mixesByCost({ stocks }: PlacementProblem, dearest: number): Generator<BoardLimits> {
  const prices = stocks.map(({ board }) => Math.round((board.price ?? 0) * 1000));
  const found: { counts: number[]; cost: number; boards: number; area: number }[] = [];
  const add = (counts: number[], cost: number, boards: number, area: number): void => {
    const at = counts.length;
    if (found.length >= MOST_LOOKED_AT) return;
    if (at === stocks.length) {
      if (boards > 0) found.push({ counts, cost, boards, area });
      return;
    }
    const most = Math.min(
      stocks[at].board.available ?? Infinity,
      prices[at] > 0 ? Math.floor((dearest - cost) / prices[at]) : MOST_FREE,
    );
    for (let count = 0; count <= most; count++) {
      add([...counts, count], cost + count * prices[at], boards + count, area + count * stocks[at].area);
    }
  };
  add([], 0, 0, 0);
  found.sort((a, b) => a.cost - b.cost || a.boards - b.boards || a.area - b.area);
  for (const { counts, boards } of found) yield { boards, available: counts };
}

/** Boards that cost nothing which are thought of. */
const MOST_FREE = 50;
