import { leastByPairs } from './leastByPairs.js';
import { pricesOfArcs } from './pricesOfArcs.js';
import { leastBeyond } from './rowPath.js';
import type { RowSort, RowSpace } from './rowSpace.js';
import type { UsualPrices } from './usualPrices.js';

/**
 * The boards that prices ask for, whatever the layout: what all rows come to at least, over what a board may come to. Whole
 * numbers throughout. What is at hand may carry all that it can, and counts for none.
 */
export function provenBoards(space: RowSpace, { kinds, boards }: UsualPrices): number {
  const { groups, sorts, problem } = space;
  const arcs = groups.map(({ sort }) => pricesOfArcs(sort, kinds));
  const pricesOf = ({ group }: RowSort): Float64Array => arcs[group];
  const alone = groups.reduce((sum, { sort, count }) => sum + count * leastBeyond(sort.graph, pricesOf(sort))[0], 0);
  const most = Math.max(1, ...problem.stocks.map(({ board }, stock) => (board.atHand ? 0 : boards[stock])));
  const atHand = problem.stocks.reduce((sum, { board }, at) => sum + (board.atHand ? boards[at] * (board.available ?? 1) : 0), 0);
  const asked = (sum: number): number => Math.max(0, Math.floor((sum - atHand + most - 1) / most));
  const least = asked(alone);
  // Neighbouring rows are kept apart only where that may tell more.
  return Math.max(least, asked(leastByPairs(space, [...sorts.keys()], pricesOf) ?? alone));
}
