import { twiceArea } from '../survey/outline.js';
import type { Laid } from './laid.js';
import { laidPieces } from './laidPieces.js';
import type { PlacementProblem } from './placementProblem.js';
import type { Preference } from './preference.js';
import { boughtOf } from './searchAtHand.js';

/** Why the number of boards is what it is, in words. */
export function reasonsFor(problem: PlacementProblem, laid: Laid, bound: number, why?: string): string[] {
  const boards = boughtOf(laid);
  const atHand = laid.boards.length - boards;
  const largest = Math.max(...problem.stocks.map((stock) => stock.area));
  const byArea = Math.ceil(twiceAreaOf(problem, laid) / (2e6 * largest));
  const longest = Math.max(...problem.stocks.map((stock) => stock.length));
  const widest = Math.max(...problem.stocks.map((stock) => stock.width));
  const large = laid.wanted.filter(({ piece, width }) => 2 * piece.cut > longest && 2 * width > widest).length;
  const reasons: string[] = [];
  if (atHand > 0)
    reasons.push(atHand === 1 ? 'One piece of board at hand is used.' : `${atHand} pieces of board at hand are used.`);
  if (boards === 0) return [...reasons, 'Nothing is to be bought.'];
  if (atHand > 0 || byArea > boards) reasons.push(`${boards} to be bought.`);
  else if (byArea === boards) reasons.push(`The area alone takes ${boards} boards.`);
  else {
    const taking = bound === boards ? 'joints on joists and staggered rows take' : 'this layout takes';
    reasons.push(`The area alone would take ${byArea} boards; ${taking} ${boards}.`);
  }
  if (large === boards && large > 1 && atHand === 0)
    reasons.push(`${large} pieces are over half a board long: no two of them share a board.`);
  else if (why !== undefined && byArea !== boards) reasons.push(why);
  const rows = boundedRows(problem);
  if (bound < boards && mayTakeMore.has(problem.prefer))
    reasons.push(`No layout${ON[rows]} takes fewer than ${bound}; what is preferred here may take more.`);
  else reasons.push(boundReason(boards, bound, rows));
  return reasons;
}

/** Of the pieces as cut, on the grid. */
const twiceAreaOf = (problem: PlacementProblem, laid: Laid): number =>
  laidPieces(problem, laid).reduce((sum, { shape: { outline, holes } }) => {
    const ofHoles = holes.reduce((total, hole) => total + Math.abs(twiceArea(hole)), 0);
    return sum + Math.abs(twiceArea(outline)) - ofHoles;
  }, 0);

/** Preferences that look at other things before boards. */
const mayTakeMore: ReadonlySet<Preference> = new Set(['tradesperson', 'joints', 'certainty', 'cost', 'estimator']);

/** Of which rows a bound holds; docs/placement.md says why. */
export type BoundedRows = 'all rows' | 'full rows' | 'rows that go on';

export function boundedRows({ parts }: PlacementProblem): BoundedRows {
  if (parts.some(({ standing }) => standing.up.length > 0)) return 'rows that go on';
  return parts.length === 1 && parts[0].clear === undefined ? 'all rows' : 'full rows';
}

const ON: Readonly<Record<BoundedRows, string>> = {
  'all rows': '',
  'full rows': ' on full rows with at most one ripped at each side',
  'rows that go on': ' on the rows that go on from what is up',
};

/** Whether fewer boards might do. */
export const boundReason = (boards: number, bound: number, rows: BoundedRows): string =>
  bound === boards
    ? `No layout under these rules${ON[rows]} takes fewer than ${bound}.`
    : `At least ${bound} are needed${ON[rows]}; whether ${bound} would do is not known.`;

/** Why a layout takes more boards than another that was found. */
export const moreReason = (boards: number, fewest: number): string =>
  `${fewest} will do: ${boards - fewest} more for fewer butt joints, short pieces or cuts.`;
