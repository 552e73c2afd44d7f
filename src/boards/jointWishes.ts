import { type JointWishes, nearnessOf } from './nearnessOf.js';
import type { PlacementProblem } from './placementProblem.js';
import type { Band } from './rowLayouts.js';

/**
 * For a problem, a function that says what a butt joint across a row would come too near to; `at` is the middle of the joint, in the
 * coordinates of the row's part. Where the room is narrower than the row it may say more than the finished layout does.
 */
export function jointWishes(problem: PlacementProblem): (band: Band, at: number) => JointWishes {
  const near = problem.parts.map((part) => nearnessOf(problem, part));
  return (band, at) => near[band.part]('butt joint', { u: at, v: band.low }, { u: at, v: band.high });
}
