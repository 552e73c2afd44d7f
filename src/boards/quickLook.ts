import { blockedBy } from './jointConflicts.js';
import type { LaidRows } from './laidRows.js';
import { lightestPair } from './lightestPair.js';
import { packInOrder } from './packInOrder.js';
import { leastBeyond, lightestWay, type RowPath, rowPath } from './rowPath.js';
import type { RowSort, RowSpace } from './rowSpace.js';
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
export function quickBound({ problem, kinds, groups }: RowSpace): QuickLook {
  const asked = usualPrices(problem, kinds).map((prices) => {
    const bought = problem.stocks.flatMap(({ board }, stock) => (board.atHand ? [] : [prices.boards[stock]]));
    const most = Math.max(1, ...bought);
    // What is at hand may carry all that it can.
    let sum = problem.stocks.reduce(
      (total, { board }, at) => (board.atHand ? total - prices.boards[at] * (board.available ?? 1) : total),
      0,
    );
    for (const { sort, count } of groups) sum += count * leastBeyond(sort.graph, arcPrices(sort.kinds, prices.kinds))[0];
    return { prices, asked: sum / most, boards: bought.length === 0 ? 0 : Math.max(0, Math.floor((sum + most - 1) / most)) };
  });
  asked.sort((a, b) => b.asked - a.asked);
  return {
    boards: Math.max(problem.stocks.some(({ board }) => board.atHand) ? 0 : 1, ...asked.map(({ boards }) => boards)),
    prices: asked.slice(0, MOST_PRICES).map(({ prices }) => prices),
  };
}

const arcPrices = (kinds: Int32Array, prices: Float64Array): Float64Array =>
  Float64Array.from(kinds, (kind) => (kind < 0 ? 0 : prices[kind]));

/**
 * Layouts that come to little by prices known beforehand: row after row the lightest way that keeps its joints apart from those
 * below, all pieces cut in order. `first`: an objective that counts before the prices.
 */
export function* quickLayouts(space: RowSpace, look: QuickLook, first: number | undefined, most: number): Generator<LaidRows> {
  for (const prices of look.prices) {
    const paths = pathsBy(space, prices, first);
    if (paths === undefined) continue;
    const counts = new Int32Array(space.kinds.length);
    for (const { kinds, counts: of } of paths) for (const [at, kind] of kinds.entries()) counts[kind] += of[at];
    const packed = packInOrder(space.problem.stocks, space.kinds, counts, most);
    if (packed !== undefined) yield { paths, packed };
  }
}

function pathsBy(space: RowSpace, prices: UsualPrices, first: number | undefined): RowPath[] | undefined {
  const whole = Math.max(...prices.boards);
  const costs = new Map(
    space.groups.map(({ sort }) => [
      sort,
      Float64Array.from(sort.kinds, (kind, arc) => {
        const price = kind < 0 ? 0 : prices.kinds[kind] / whole;
        return (first === undefined ? 0 : sort.costs[first][arc] * FIRST) + price + (kind < 0 ? 0 : PIECE);
      }),
    ]),
  );
  return pathsInTurn(space, (sort) => costs.get(sort) as Float64Array);
}

/** Two ways to divide a row in turn where all rows are alike, and else row after row the lightest. */
function pathsInTurn(space: RowSpace, costsOf: (sort: RowSort) => Float64Array): RowPath[] | undefined {
  const { sorts, set, alike } = space;
  if (alike !== undefined && sorts.length > 1) {
    const sums = [0, 1].map((turn) => {
      const sum = new Float64Array(alike.to.length);
      for (const [row, sort] of sorts.entries()) {
        if (row % 2 === turn) for (const [arc, cost] of costsOf(sort).entries()) sum[arc] += cost;
      }
      return sum;
    });
    const pair = lightestPair(alike, set.conflicts[0], sums[0], sums[1]);
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

/** Whether rows that are alike can be laid at all without regard to boards; undefined where that is not known beforehand. */
export function canBeStaggered({ alike, sorts, set }: RowSpace): boolean | undefined {
  if (alike === undefined) return undefined;
  if (sorts.length === 1) return true;
  const nothing = new Float64Array(alike.to.length);
  return lightestPair(alike, set.conflicts[0], nothing, nothing) !== undefined;
}

/** What rows that are alike come to at least, two by two, by prices of arcs. */
export function leastByPairs(
  { alike, set }: RowSpace,
  sorts: readonly RowSort[],
  costsOf: (sort: RowSort) => Float64Array,
): number | undefined {
  if (alike === undefined || sorts.length < 2) return undefined;
  const single = (sort: RowSort): number => leastBeyond(alike, costsOf(sort))[0];
  const known = new Map<string, number>();
  const pair = (row: number): number => {
    const [a, b] = [sorts[row], sorts[row + 1]];
    const key = `${sorts.indexOf(a)} ${sorts.indexOf(b)}`;
    const sum = known.get(key) ?? lightestPair(alike, set.conflicts[0], costsOf(a), costsOf(b))?.cost ?? Infinity;
    known.set(key, sum);
    return sum;
  };
  const from = (start: number): number => {
    let sum = start === 1 ? single(sorts[0]) : 0;
    let row = start;
    for (; row + 1 < sorts.length; row += 2) sum += pair(row);
    return row < sorts.length ? sum + single(sorts[row]) : sum;
  };
  return Math.max(from(0), from(1));
}

/** In boards: what one of the first objective counts for, and any piece. */
const FIRST = 1000;
const PIECE = 1e-3;
