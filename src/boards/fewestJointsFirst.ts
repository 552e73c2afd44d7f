import { type Found, someLayout } from './fewestBoards.js';
import { anyBoards, ask, bestOf, isLaid, type Search } from './search.js';

/** The fewest butt joints, and with those the fewest boards. */
export function fewestJointsFirst(search: Search): Found {
  const { candidates } = search;
  const some = someLayout(search, {});
  if (some === 'none') return { laid: undefined, bound: Infinity, jointsProven: false };
  const bound = candidates[0].bound;
  let sure = true;
  for (
    let joints = Math.min(...candidates.map((rows) => rows.joints));
    joints <= (some?.measures.joints ?? MOST_JOINTS);
    joints++
  ) {
    const able = candidates.filter((rows) => rows.joints <= joints);
    const answers = able.map((rows) => ask(search, rows, { joints }));
    const spare = bestOf(search, answers.filter(isLaid));
    if (answers.includes('unknown')) sure = false;
    if (spare === undefined) continue;
    const left = able.filter((_, at) => answers[at] !== 'none');
    for (let boards = Math.min(...left.map((rows) => rows.bound)); boards < spare.boards.length; boards++) {
      const found = left
        .filter((rows) => rows.bound <= boards)
        .map((rows) => ask(search, rows, { joints, boards: anyBoards(search, boards) }))
        .filter(isLaid);
      if (found.length > 0) return { laid: bestOf(search, found), bound, jointsProven: sure };
    }
    return { laid: spare, bound, jointsProven: sure };
  }
  return { laid: some, bound, jointsProven: false };
}

const MOST_JOINTS = 10_000;
