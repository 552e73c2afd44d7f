import { type Found, fewestBoards } from './fewestBoards.js';
import { anyBoards, ask, isLaid, type Search } from './search.js';

/**
 * The fewest boards; but where one more board avoids every butt joint on an unproven joist, or has fewer of them on no more
 * boards, that is taken.
 */
export function surestLayout(search: Search): Found {
  const free = fewestBoards(search);
  if (free.laid === undefined || free.laid.measures.unprovenEnds === 0) return free;
  const boards = free.laid.boards.length;
  const sure = fewestBoards(search, { first: 0 });
  if (sure.laid !== undefined && sure.laid.boards.length <= boards + 1) return { ...sure, bound: free.bound };
  let best = free;
  for (let unproven = free.laid.measures.unprovenEnds - 1; unproven >= 0; unproven--) {
    const rows = search.candidates.find((each) =>
      isLaid(ask(search, each, { first: unproven, boards: anyBoards(search, boards) }, STEPS_EACH)),
    );
    if (rows === undefined) break;
    const fewer = fewestBoards(search, { first: unproven });
    if (fewer.laid === undefined || fewer.laid.boards.length > boards) break;
    best = { ...fewer, bound: free.bound };
    unproven = Math.min(unproven, fewer.laid.measures.unprovenEnds);
  }
  return best;
}

const STEPS_EACH = 2000;
