import { bestLayout } from './bestLayout.js';
import type { Laid } from './laid.js';
import { laidFrom } from './laidFrom.js';
import type { PlacementProblem } from './placementProblem.js';

/** What a search found. */
export interface Found {
  /** Nothing when no way to lay the room was found. */
  readonly laid: Laid | undefined;
  /** No layout has fewer boards; Infinity when there is none at all. */
  readonly bound: number;
  /** Whether no layout of as many boards has fewer butt joints. */
  readonly jointsProven: boolean;
}

/** Looks for the best layout over all ways to divide the room into rows. */
export function searchLayout(problem: PlacementProblem): Found {
  const { best, bound, jointsProven } = bestLayout(problem);
  return { laid: best && laidFrom(problem, best.space, best.laid), bound, jointsProven };
}

/** Whether some layout keeps the rules, as far as a short search can tell. */
export function hasLayout(problem: PlacementProblem): boolean {
  return bestLayout({ ...problem, request: { ...problem.request, budget: STEPS_OF_ANY } }).best !== undefined;
}

const STEPS_OF_ANY = 400;
