import { blockedBy } from './jointConflicts.js';
import type { LaidRows } from './laidRows.js';
import { lightestPair } from './lightestPair.js';
import { packInOrder } from './packInOrder.js';
import { provenBoards } from './provenBoards.js';
import { leastBeyond, lightestWay, type RowPath, rowPath } from './rowPath.js';
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
      (total, { sort, count }) => total + count * leastBeyond(sort.graph, arcPrices(sort.kinds, prices.kinds))[0],
      0,
    );
    return { prices, asked: sum / Math.max(1, ...prices.boards) };
  });
  asked.sort((a, b) => b.asked - a.asked);
  const prices = asked.slice(0, MOST_PRICES).map((each) => each.prices);
  return { boards: provenBoards(space, prices[0]), prices };
}

const arcPrices = (kinds: Int32Array, prices: Float64Array): Float64Array =>
  Float64Array.from(kinds, (kind) => (kind < 0 ? 0 : prices[kind]));

/**
 * Layouts that come to little by prices known beforehand: row after row the lightest way that keeps its joints apart from those
 * below, all pieces cut in order. `first`: an objective that counts before the prices.
 */
export function* quickLayouts(space: RowSpace, look: QuickLook, first: number | undefined, most: number): Generator<LaidRows> {
  for (const [at, prices] of look.prices.entries()) {
    const costs = costsBy(space, prices, first);
    const inTurn = pathsInTurn(space, (sort) => costs[sort.group]);
    const many = at < MOST_SPREAD ? spreadRows(space, costs) : [];
    for (const paths of inTurn === undefined ? many : [inTurn, ...many]) {
      const counts = new Int32Array(space.kinds.length);
      for (const { kinds, counts: of } of paths) for (const [each, kind] of kinds.entries()) counts[kind] += of[each];
      const packed = packInOrder(space.problem.stocks, space.kinds, counts, most);
      if (packed !== undefined) yield { paths, packed };
    }
  }
}

/** Prices by which rows are laid in many ways. */
const MOST_SPREAD = 3;

/** Per sort, per arc: what a piece counts for. */
const costsBy = ({ groups }: RowSpace, prices: UsualPrices, first: number | undefined): Float64Array[] => {
  const whole = Math.max(...prices.boards);
  return groups.map(({ sort }) =>
    Float64Array.from(sort.kinds, (kind, arc) => {
      const price = kind < 0 ? 0 : prices.kinds[kind] / whole;
      return (first === undefined ? 0 : sort.costs[first][arc] * FIRST) + price + (kind < 0 ? 0 : PIECE);
    }),
  );
};

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

/** In boards: what one of the first objective counts for, and any piece. */
const FIRST = 1000;
const PIECE = 1e-3;
