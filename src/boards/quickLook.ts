import { blockedBy } from './jointConflicts.js';
import type { LaidRows } from './laidRows.js';
import { lightestPair } from './lightestPair.js';
import { packInOrder } from './packInOrder.js';
import { pricesOfArcs } from './pricesOfArcs.js';
import { provenBoards } from './provenBoards.js';
import type { Cap } from './relaxation.js';
import { countsOf, leastBeyond, lightestWay, type RowPath, rowPath } from './rowPath.js';
import type { RowSort, RowSpace } from './rowSpace.js';
import { spreadRows } from './spreadRows.js';
import { type UsualPrices, usualPrices } from './usualPrices.js';

/** What is known of a division into rows before anything is searched. */
export interface QuickLook {
  /** No layout on these rows has fewer boards. */
  readonly boards: number;
  /** The prices that tell most, first. */
  readonly prices: readonly UsualPrices[];
}

const MOST_PRICES = 10;

/** The most that prices known beforehand ask for. */
export function quickBound(space: RowSpace): QuickLook {
  const { problem, kinds, groups } = space;
  const asked = usualPrices(problem, kinds).map((prices) => {
    const sum = groups.reduce(
      (total, { sort, count }) => total + count * leastBeyond(sort.graph, pricesOfArcs(sort, prices.kinds))[0],
      0,
    );
    return { prices, asked: sum / Math.max(1, ...prices.boards) };
  });
  asked.sort((a, b) => b.asked - a.asked);
  const prices = asked.slice(0, MOST_PRICES).map((each) => each.prices);
  return { boards: provenBoards(space, prices[0]), prices };
}

/** An objective that counts before the prices, and what it may come to: less, as layouts are found. */
export interface First {
  readonly objective: number;
  readonly most: () => number;
}

/**
 * Layouts that come to little by prices known beforehand: row after row the lightest way that keeps its joints apart from those
 * below, all pieces cut in order from no more than so many boards. Those whose rows alone pass a cap are left out.
 */
export function* quickLayouts(
  space: RowSpace,
  look: QuickLook,
  boards: number,
  caps: readonly Cap[],
  first?: First,
): Generator<LaidRows> {
  const costs = look.prices.map((prices) => costsBy(space, prices, first?.objective));
  const isWanted = (paths: readonly RowPath[]): boolean =>
    (first === undefined || costOf(space, paths, first) <= first.most()) &&
    caps.every((cap) => costOf(space, paths, cap) <= cap.most);
  for (const each of costs) {
    const paths = pathsInTurn(space, ({ group }) => each[group]) ?? [];
    const laid = isWanted(paths) ? cutInOrder(space, paths, boards) : undefined;
    if (laid !== undefined) yield laid;
  }
  for (const each of costs.slice(0, MOST_SPREAD)) {
    for (const paths of spreadRows(space, each)) {
      const laid = isWanted(paths) ? cutInOrder(space, paths, boards) : undefined;
      if (laid !== undefined) yield laid;
    }
  }
}

const costOf = ({ objectives }: RowSpace, paths: readonly RowPath[], { objective }: Pick<Cap, 'objective'>): number =>
  paths.reduce((sum, { costs }) => sum + costs[objective], objectives[objective].fixed);

/** All pieces of these rows cut in order. */
export function cutInOrder({ problem, kinds }: RowSpace, paths: readonly RowPath[], most: number): LaidRows | undefined {
  if (paths.length === 0) return undefined;
  const packed = packInOrder(problem.stocks, kinds, countsOf(kinds.length, paths), most);
  return packed && { paths, packed };
}

/** Prices by which rows are laid in many ways. */
const MOST_SPREAD = 3;

/** Per sort, per arc: what a piece counts for. */
function costsBy({ groups }: RowSpace, prices: UsualPrices, first: number | undefined): Float64Array[] {
  const whole = Math.max(...prices.boards);
  return groups.map(({ sort }) => {
    const costs = pricesOfArcs(sort, prices.kinds);
    for (let arc = 0; arc < costs.length; arc++) {
      costs[arc] = costs[arc] / whole + (sort.kinds[arc] < 0 ? 0 : PIECE);
      if (first !== undefined) costs[arc] += sort.costs[first][arc] * FIRST;
    }
    return costs;
  });
}

/** Two ways to divide a row in turn where all rows are alike, and else row after row the lightest. */
function pathsInTurn(space: RowSpace, costsOf: (sort: RowSort) => Float64Array): RowPath[] | undefined {
  const { sorts, set, alike } = space;
  if (alike !== undefined && sorts.length > 1) {
    const sums = [0, 1].map((turn) => {
      const sum = new Float64Array(alike.to.length);
      for (const [row, sort] of sorts.entries()) {
        if (row % 2 !== turn) continue;
        const costs = costsOf(sort);
        for (let arc = 0; arc < sum.length; arc++) sum[arc] += costs[arc];
      }
      return sum;
    });
    const pair = lightestPair(alike, alike, set.conflicts[0], sums[0], sums[1]);
    return pair && sorts.map((sort, row) => rowPath(space, sort, row % 2 === 0 ? pair.below : pair.above));
  }
  const paths: RowPath[] = [];
  for (const [row, sort] of sorts.entries()) {
    const blocked = row === 0 ? undefined : blockedBy(set.conflicts[row - 1], paths[row - 1]);
    const of = costsOf(sort);
    const least = leastBeyond(sort.graph, of, blocked);
    if (least[0] === Infinity) return undefined;
    paths.push(rowPath(space, sort, lightestWay(sort.graph, of, blocked, least)));
  }
  return paths;
}

/** In boards: what one of the first objective counts for, and any piece. */
const FIRST = 1000;
const PIECE = 1e-3;
