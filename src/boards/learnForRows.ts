import { type Chain, lightestChain } from './chain.js';
import type { LayoutSpace } from './layoutSpace.js';
import { type Lightest, learnWeights, type Mixture } from './learnWeights.js';
import type { RowPattern } from './rowPatterns.js';

/** Weights of pieces that were learnt for some rows: per row, per arc; and what a board of each stock can carry of them. */
export interface LearntCost {
  readonly arcs: readonly Float64Array[];
  readonly boards: readonly number[];
}

/** How the rows of a layout take part: which sort of strip each is, and what it counts for. */
interface Sorts {
  readonly strips: readonly number[];
  readonly ofRow: readonly number[];
  readonly share: readonly number[];
  readonly stocks: readonly number[];
}

const ROUNDS = 60;
/** Patterns that are weighed again in every round, at most. */
const MOST_PATTERNS = 1500;

/** Looks for weights under which these patterns of the rows ask for more than `boards`. */
export function learnForRows(space: LayoutSpace, chain: Chain, boards: number): LearntCost | undefined {
  // What is learnt counts a piece for the width of its row.
  if (space.rows.some(({ graph }) => graph.narrow)) return undefined;
  if (new Set(chain.patterns.flat()).size > MOST_PATTERNS) return undefined;
  const used = new Set<number>();
  for (const [row, list] of chain.patterns.entries()) {
    for (const { arcs } of list) {
      for (const arc of arcs) if (chain.rows.kinds[row][arc] >= 0) used.add(space.kinds[chain.rows.kinds[row][arc]].size);
    }
  }
  const lengths = Float64Array.from(used).sort();
  const place = new Map([...lengths].map((length, at) => [length, at]));
  const lengthOf = space.kinds.map(({ size }) => place.get(size) ?? -1);
  const sorts = sortsOf(space);
  const whole = space.weighings.find(({ lengths: { weight } }) => weight.family === 'length');
  if (whole === undefined) return undefined;
  const mixture: Mixture = {
    lengths,
    strips: sorts.strips,
    stocks: whole.lengths.boards.map((capacity, stock) => ({ capacity, share: sorts.stocks[stock] })),
    lightest: (weights) => lightest(chain, lengthOf, sorts, weights),
  };
  const learnt = learnWeights(mixture, boards + 1, ROUNDS);
  if (learnt === undefined) return undefined;
  const known = new Map<string, Float64Array>();
  const arcs = chain.rows.kinds.map((kinds, row) => {
    const key = `${sorts.ofRow[row]} ${sorts.share[row]} ${chain.rows.kinds.indexOf(kinds)}`;
    const of = known.get(key) ?? arcWeights(kinds, lengthOf, learnt.weights[sorts.ofRow[row]], sorts.share[row]);
    known.set(key, of);
    return of;
  });
  return { arcs, boards: learnt.boards };
}

function arcWeights(kinds: Int32Array, lengthOf: readonly number[], weights: Float64Array, share: number): Float64Array {
  return Float64Array.from(kinds, (kind) => (kind < 0 ? 0 : Math.floor((weights[lengthOf[kind]] ?? 0) * share)));
}

/**
 * With one narrower width, whole pieces and strips are weighed apart, for they fill boards as if each lane of strips were a
 * board of its own. With several, a strip counts for a share of the weight of its length.
 */
function sortsOf({ rows, weighings, lanes }: LayoutSpace): Sorts {
  const { widths } = weighings[0];
  const most = Math.max(...widths.boards);
  const narrow = [...new Set(rows.map(({ band }) => band.width))].filter((width) => (widths.of.get(width) as number) < most);
  const stocks = widths.boards.map((board) => board / most);
  if (narrow.length <= 1 && widths.boards.length === 1) {
    const count = narrow.map((width) => lanes[rows.findIndex(({ band }) => band.width === width)]);
    return {
      strips: [1, ...count],
      ofRow: rows.map(({ band }) => (narrow.includes(band.width) ? 1 : 0)),
      share: rows.map(() => 1),
      stocks,
    };
  }
  return {
    strips: [1],
    ofRow: rows.map(() => 0),
    share: rows.map(({ band }) => (widths.of.get(band.width) as number) / most),
    stocks,
  };
}

function lightest(
  chain: Chain,
  lengthOf: readonly number[],
  { ofRow, share }: Sorts,
  weights: readonly Float64Array[],
): Lightest {
  const known = new Map<readonly RowPattern[], Map<number, Float64Array>>();
  const costs = chain.patterns.map((list, row) => {
    const byShare = known.get(list) ?? new Map<number, Float64Array>();
    known.set(list, byShare);
    const key = ofRow[row] + share[row] / 2;
    const of =
      byShare.get(key) ??
      Float64Array.from(list, ({ arcs }) => {
        let total = 0;
        for (const arc of arcs) {
          const kind = chain.rows.kinds[row][arc];
          if (kind >= 0) total += weights[ofRow[row]][lengthOf[kind]];
        }
        return total * share[row];
      });
    byShare.set(key, of);
    return of;
  });
  const { weight, patterns } = lightestChain(chain, costs);
  const wanted = weights.map((each) => new Float64Array(each.length));
  for (const [row, at] of patterns.entries()) {
    for (const arc of chain.patterns[row][at].arcs) {
      const kind = chain.rows.kinds[row][arc];
      if (kind >= 0) wanted[ofRow[row]][lengthOf[kind]] += share[row];
    }
  }
  return { weight, wanted };
}
