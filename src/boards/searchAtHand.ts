import { bestAlone } from './bestLayout.js';
import type { Laid, Measures } from './laid.js';
import { measure } from './measures.js';
import type { PlacementProblem } from './placementProblem.js';
import { rowSets } from './rowSets.js';
import { type Found, hasLayout, searchLayout } from './searchLayout.js';
import type { Stock } from './stocksOf.js';

/** Looks for the best layout, with what is up already taken into account. */
export function searchAtHand(problem: PlacementProblem): Found {
  const nothing = hasUp(problem) ? nothingToLay(problem) : undefined;
  return nothing === undefined ? searchLayout(problem) : { laid: nothing, bound: 0, jointsProven: true };
}

/** The fewest boards to be bought that a search finds; nothing where it finds no layout. */
export const fewestAtHand = (problem: PlacementProblem): number | undefined =>
  hasUp(problem) && nothingToLay(problem) !== undefined ? 0 : bestAlone(problem, ['boards'])?.values[0];

/** Whether some layout keeps the rules round what is up, as far as a short search can tell. */
export const hasLayoutAtHand = (problem: PlacementProblem): boolean =>
  (hasUp(problem) && nothingToLay(problem) !== undefined) || hasLayout(problem);

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
  return { ...laid, measures: measure(problem, laid) };
}

/** The measures of a layout of which only what is bought counts. */
export function boughtMeasures(laid: Laid): Measures {
  const bought = laid.boards.filter(({ stock }) => !isAtHand(stock));
  const area = bought.reduce((sum, { stock }) => sum + stock.area, 0);
  const cost = bought.reduce((sum, { stock }) => sum + Math.round((stock.board.price ?? 0) * 1000), 0);
  return { ...laid.measures, boards: bought.length, area, cost };
}
