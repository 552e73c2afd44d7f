import type { Found } from './fewestBoards.js';
import type { Laid, Measures } from './laid.js';
import { inOrder, isBetter, measure } from './measures.js';
import { capacityOf } from './packKinds.js';
import type { PlacementProblem } from './placementProblem.js';
import { rowSets } from './rowSets.js';
import { startSearch } from './search.js';
import { hasLayout, searchLayout } from './searchLayout.js';
import type { Stock } from './stocksOf.js';

/** Looks for the best layout, with what is up already and what is at hand taken into account. */
export function searchAtHand(problem: PlacementProblem): Found {
  const nothing = hasUp(problem) ? nothingToLay(problem) : undefined;
  if (nothing !== undefined) return { laid: nothing, bound: 0, jointsProven: true };
  if (isTooLittle(problem)) return { laid: undefined, bound: Infinity, jointsProven: false };
  return problem.stocks.some(isAtHand) ? withFewestBought(problem) : searchLayout(problem);
}

/** Whether all that there is falls short of what any layout takes; where there is no end of some size, nobody looks. */
function isTooLittle(problem: PlacementProblem): boolean {
  const available = problem.stocks.map(({ board }) => board.available ?? Infinity);
  const boards = available.reduce((sum, each) => sum + each, 0);
  if (boards === Infinity) return false;
  const limits = { boards, available };
  return startSearch(problem).candidates.every(({ weighings }) =>
    weighings.some((weighing) => weighing.least > capacityOf(weighing.boards, limits)),
  );
}

/** Whether some layout keeps the rules round what is up, as far as a short search can tell. */
export const hasLayoutAtHand = (problem: PlacementProblem): boolean =>
  (hasUp(problem) && nothingToLay(problem) !== undefined) || (!isTooLittle(problem) && hasLayout(problem));

const hasUp = ({ parts }: PlacementProblem): boolean => parts.some(({ standing }) => standing.up.length > 0);

const isAtHand = ({ board }: Stock): boolean => board.atHand === true;

/** Boards of a layout that are to be bought. */
export const boughtOf = ({ boards }: Laid): number => boards.filter(({ stock }) => !isAtHand(stock)).length;

/** A room that is full already. */
function nothingToLay(problem: PlacementProblem): Laid | undefined {
  const full = rowSets(problem).find(({ rows }) =>
    rows.every(({ graph }) => graph.nodes > 0 && graph.piece.every((piece) => piece === undefined)),
  );
  if (full === undefined) return undefined;
  const divisions = full.rows.map(({ runs }) => ({ pieces: runs.map(() => []), joints: [], joists: [] }));
  const laid = { ...full, divisions, wanted: [], boards: [] };
  return { ...laid, measures: measure(problem, laid), first: 0 };
}

/** How many boards more than the fewest are tried, where they may save butt joints. */
const MORE = 2;

/**
 * The search counts all boards alike, so it is asked with no board to be bought, then with one of each size, and so on, until
 * there is a layout; then whether more are better by the preference.
 */
function withFewestBought(problem: PlacementProblem): Found {
  const limited = (most: number): PlacementProblem => ({
    ...problem,
    stocks: problem.stocks.map((stock) =>
      isAtHand(stock) ? stock : { ...stock, board: { ...stock.board, available: Math.min(most, stock.board.available ?? most) } },
    ),
  });
  const atHand = problem.stocks.filter(isAtHand).reduce((sum, { board }) => sum + (board.available ?? 1), 0);
  const least = startSearch(problem).candidates[0]?.bound;
  if (least === undefined) return { laid: undefined, bound: Infinity, jointsProven: false };
  let bound = Math.max(0, least - atHand);
  let isSure = true;
  for (let most = bound; most <= least + MOST_TRIED; most++) {
    if (isTooLittle(limited(most))) {
      if (isSure) bound = most + 1;
      continue;
    }
    const fewest = searchLayout({ ...limited(most), prefer: 'boards' });
    if (fewest.laid === undefined) {
      isSure &&= fewest.bound === Infinity;
      if (isSure) bound = most + 1;
      continue;
    }
    const others = Array.from({ length: triesOf(problem) }, (_, i) => searchLayout(limited(most + i)).laid);
    const laid = others.reduce<Laid>(
      (best, each) => (each !== undefined && isPreferred(problem, each, best) ? each : best),
      fewest.laid,
    );
    return { laid, bound: Math.min(bound, boughtOf(laid)), jointsProven: false };
  }
  return { laid: undefined, bound: isSure ? Infinity : bound, jointsProven: false };
}

/** Only some preferences would rather have another board. */
const triesOf = ({ prefer }: PlacementProblem): number =>
  prefer === 'boards' ? 0 : prefer === 'cost' || prefer === 'estimator' ? 1 : MORE + 1;

/** Boards beyond the bound that are thought of. */
const MOST_TRIED = 12;

/** The measures of a layout of which only what is bought counts. */
export function boughtMeasures(laid: Laid): Measures {
  const bought = laid.boards.filter(({ stock }) => !isAtHand(stock));
  const area = bought.reduce((sum, { stock }) => sum + stock.area, 0);
  const cost = bought.reduce((sum, { stock }) => sum + Math.round((stock.board.price ?? 0) * 1000), 0);
  return { ...laid.measures, boards: bought.length, area, cost };
}

const isPreferred = ({ prefer }: PlacementProblem, one: Laid, other: Laid): boolean =>
  isBetter(inOrder(boughtMeasures(one), prefer), inOrder(boughtMeasures(other), prefer));
