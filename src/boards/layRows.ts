import { type CappedCost, type Chain, leastOfRows, narrow, type RowsToLay, restAbove, tightestFirst } from './chain.js';
import type { Steps } from './packKinds.js';
import type { RowGraph } from './rowGraph.js';
import { type PatternList, rowPatterns } from './rowPatterns.js';
import { type LaidRows, type Pack, searchChain } from './searchChain.js';

/** Patterns of one row that are looked at. */
const MOST_PATTERNS = 2000;
/** Tries before the costs are carried through the rows, and before more is learnt about them. */
const FIRST_TRIES = 150;
const SECOND_TRIES = 600;

/**
 * Looks for a division of every row such that neighbouring rows keep their joints apart, no cost passes its cap, and the pieces
 * can be cut.
 *
 * First a few are tried in the order of the costs. Then each cost in turn is carried through the rows, from both ends, and
 * patterns that are in no chain of rows within the cap are left out. If what remains is still much, `learn` may find one more
 * cost that tells what is possible from what is not; then all of it is searched.
 *
 * @returns `none` when there is no such division; `unknown` when the steps ran out first
 */
export function layRows<T>(
  rows: RowsToLay,
  costs: readonly CappedCost[],
  pack: Pack<T>,
  steps: Steps,
  learn: (chain: Chain) => CappedCost | undefined,
): LaidRows<T> | 'none' | 'unknown' {
  const lists = listsFor(rows, costs);
  if (lists === 'none' || lists === 'unknown') return lists;
  const complete = lists.every((list) => list.complete);
  const chain: Chain = {
    rows,
    costs,
    patterns: lists.map(({ patterns }) => patterns),
    rest: costs.map(({ arcs }) => restAbove(leastOfRows(rows.graphs, arcs))),
    carried: [],
  };
  const answer = (found: LaidRows<T> | 'none' | 'unknown') => (found === 'none' && !complete ? 'unknown' : found);
  const tried = within(steps, FIRST_TRIES, (some) => searchChain(chain, pack, some));
  if (tried !== 'unknown') return answer(tried);
  const narrowed = narrow(chain, tightestFirst(chain));
  if (narrowed === 'none') return answer('none');
  const again = within(steps, SECOND_TRIES, (some) => searchChain(narrowed, pack, some));
  if (again !== 'unknown' || steps.left <= 0) return answer(again);
  const learnt = learn(narrowed);
  const all = learnt === undefined ? narrowed : withCost(narrowed, learnt);
  return all === 'none' ? answer('none') : answer(searchChain(all, pack, steps));
}

function within<T>(steps: Steps, most: number, search: (some: Steps) => T): T {
  const some = { left: Math.min(most, steps.left) };
  const before = some.left;
  const found = search(some);
  steps.left -= before - Math.max(0, some.left);
  return found;
}

/** The patterns of each row within what the other rows leave of every cost; rows that are alike share a list. */
function listsFor(rows: RowsToLay, costs: readonly CappedCost[]): PatternList[] | 'none' | 'unknown' {
  const least = costs.map(({ arcs }) => leastOfRows(rows.graphs, arcs));
  const spare = costs.map(({ cap }, k) => cap - least[k].reduce((sum, each) => sum + each, 0));
  if (spare.some((each) => !(each >= 0))) return 'none';
  const known: { kinds: Int32Array; graph: RowGraph; list: PatternList }[] = [];
  const lists: PatternList[] = [];
  for (const [row, graph] of rows.graphs.entries()) {
    const alike = known.find((each) => each.graph === graph && each.kinds === rows.kinds[row]);
    const caps = costs.map((_, k) => least[k][row] + spare[k]);
    const list =
      alike?.list ?? sorted(rowPatterns({ graph, costs: costs.map(({ arcs }) => arcs[row]), caps }, rows.words, MOST_PATTERNS));
    if (list.patterns.length === 0) return list.complete ? 'none' : 'unknown';
    if (alike === undefined) known.push({ graph, kinds: rows.kinds[row], list });
    lists.push(list);
  }
  return lists;
}

const sorted = ({ patterns, complete }: PatternList): PatternList => ({
  complete,
  patterns: [...patterns].sort((a, b) => {
    for (let k = 0; k < a.costs.length; k++) if (a.costs[k] !== b.costs[k]) return a.costs[k] - b.costs[k];
    return 0;
  }),
});

/** The chain with one more cost, and only the patterns that it leaves. */
function withCost(chain: Chain, cost: CappedCost): Chain | 'none' {
  const costs = [...chain.costs, cost];
  const patterns = chain.patterns.map((list, row) =>
    list.map((pattern) => ({
      ...pattern,
      costs: Float64Array.of(
        ...pattern.costs,
        pattern.arcs.reduce((sum, arc) => sum + cost.arcs[row][arc], 0),
      ),
    })),
  );
  const least = patterns.map((list) => list.reduce((min, pattern) => Math.min(min, pattern.costs[costs.length - 1]), Infinity));
  if (least.reduce((sum, each) => sum + each, 0) > cost.cap) return 'none';
  return narrow({ ...chain, costs, patterns, rest: [...chain.rest, restAbove(least)] }, [costs.length - 1]);
}
