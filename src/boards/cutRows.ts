import type { LaidRows } from './laidRows.js';
import { isWithin, packByProgram } from './packByProgram.js';
import { packInOrder } from './packInOrder.js';
import { type BoardLimits, PLACINGS_OF_STEP, packKinds, type Shares, type Steps } from './packKinds.js';
import type { Cap, Relaxation } from './relaxation.js';
import { countsOf, type RowPath } from './rowPath.js';
import type { RowSpace } from './rowSpace.js';
import { PARTS, type WholePrices } from './wholePrices.js';

/** What is asked: whether rows can be laid so that an objective comes to no more than `most`, with others within their caps. */
export interface Question {
  readonly objective: number;
  readonly most: number;
  readonly caps: readonly Cap[];
}

/** A search that has come to a full set of rows. */
interface RowsToCut {
  readonly space: RowSpace;
  readonly question: Question;
  readonly relaxation: Relaxation;
  readonly steps: Steps;
  readonly shares: readonly Shares[];
  /** Pieces that could not be cut from what boards there were. */
  readonly uncut: Set<string>;
  sure: boolean;
}

/** Steps of one packing, and what a first look counts for. */
const STEPS_OF_PACKING = 8000;
const STEPS_OF_LOOK = 5;

/** Cuts the pieces of a full set of rows, if that can be done within what is asked; `settle` tells more of strips where that is not seen at once. */
export function cutRows(
  search: RowsToCut,
  paths: readonly RowPath[],
  prices: WholePrices,
  settle: () => WholePrices | undefined,
): LaidRows | undefined {
  const { space, question, steps } = search;
  const { problem, objectives } = space;
  const all = [...question.caps, { objective: question.objective, most: question.most }];
  const limits: { of: readonly number[]; most: number }[] = [];
  for (const { objective, most } of all) {
    const left = paths.reduce((sum, path) => sum - path.costs[objective], most - objectives[objective].fixed);
    if (left < 0) return undefined;
    if (objectives[objective].boards.some((each) => each > 0)) limits.push({ of: objectives[objective].boards, most: left });
  }
  const counts = countsOf(space.kinds.length, paths);
  if (limits.length === 0) limits.push({ of: problem.stocks.map(() => 1), most: counts.reduce((sum, each) => sum + each, 0) });
  const given: BoardLimits = { caps: limits, available: problem.stocks.map(({ board }) => board.available ?? Infinity) };
  steps.left -= STEPS_OF_LOOK;
  const quick = packInOrder(problem.stocks, space.kinds, counts, fewestWithin(limits));
  if (quick !== undefined && isWithin(quick, given)) return { paths: [...paths], packed: quick };
  const guided = packByProgram(search.relaxation, counts, given, question.most, steps);
  if (guided !== undefined) return { paths: [...paths], packed: guided };
  const own = settle() ?? prices;
  if (own.bound > question.most * PARTS) return undefined;
  const allowed = { left: Math.min(STEPS_OF_PACKING, Math.max(steps.left, 1) * PLACINGS_OF_STEP) };
  const before = allowed.left;
  const packed = packKinds(problem.stocks, space.kinds, counts, given, [...search.shares, own], allowed, search.uncut);
  steps.left -= (before - allowed.left) / PLACINGS_OF_STEP;
  if (packed === 'unknown') search.sure = false;
  return typeof packed === 'string' ? undefined : { paths: [...paths], packed };
}

/** No more boards than this are within the limits. */
const fewestWithin = (limits: BoardLimits['caps']): number =>
  Math.min(...limits.map(({ of, most }) => (of.includes(0) ? Infinity : Math.floor(most / Math.min(...of)))));
