import { cheapestLayout } from './cheapestLayout.js';
import { easiestLayout } from './easiestLayout.js';
import { type Found, fewestBoards, someLayout } from './fewestBoards.js';
import { fewestJointsFirst } from './fewestJointsFirst.js';
import type { PlacementProblem } from './placementProblem.js';
import { startSearch } from './search.js';
import { surestLayout } from './surestLayout.js';

/** Looks for the best layout over all ways to divide the room into rows. */
export function searchLayout(problem: PlacementProblem): Found {
  const search = startSearch(problem);
  if (search.candidates.length === 0) return { laid: undefined, bound: Infinity, jointsProven: false };
  switch (problem.prefer) {
    case 'tradesperson':
      return easiestLayout(search);
    case 'joints':
      return fewestJointsFirst(search);
    case 'certainty':
      return surestLayout(search);
    case 'cost':
    case 'estimator':
      return cheapestLayout(search);
    default:
      return fewestBoards(search);
  }
}

/** Whether some layout keeps the rules, as far as a short search can tell. */
export function hasLayout(problem: PlacementProblem): boolean {
  const search = startSearch(problem);
  const some = search.candidates.length === 0 ? 'none' : someLayout(search, {});
  return some !== undefined && some !== 'none';
}
