import { blockedBy } from './jointConflicts.js';
import { haveCommon, leastBeyond, type RowPath, rowPath, waysWithin } from './rowPath.js';
import type { RowSort, RowSpace } from './rowSpace.js';

/** Ways to divide a row that are thought of, and part layouts that are kept from row to row. */
const ENOUGH_WAYS = 40;
const MOST_WAYS = 60;
const KEPT = 24;
/** How much dearer than the cheapest a way may be, in boards; the first that gives enough ways. */
const SPREADS = [0.01, 0.05, 0.15, 0.4, 1];

interface Part {
  readonly cost: number;
  /** The last row, and those below it. */
  readonly path: RowPath;
  readonly below: Part | undefined;
}

/** Divisions of all rows that cost little: row after row the cheapest part layouts are kept. Nothing is proven by what is left out. */
export function spreadRows(space: RowSpace, costs: readonly Float64Array[]): (readonly RowPath[])[] {
  const ways = space.groups.map(({ sort }) => cheapWays(space, sort, costs[sort.group]));
  let parts: readonly (Part | undefined)[] = [undefined];
  for (const [row, sort] of space.sorts.entries()) {
    const next: Part[] = [];
    for (const below of parts) {
      const blocked = below && blockedBy(space.set.conflicts[row - 1], below.path);
      for (const { path, cost: own } of ways[sort.group]) {
        const cost = (below?.cost ?? 0) + own;
        // Ways stand in the order of their costs.
        if (next.length === KEPT && cost >= next[KEPT - 1].cost) break;
        if (blocked !== undefined && haveCommon(path.bits, blocked)) continue;
        keep(next, { cost, path, below });
      }
    }
    parts = next;
  }
  return parts.map((part) => {
    const paths: RowPath[] = [];
    for (let at = part; at !== undefined; at = at.below) paths.push(at.path);
    return paths.reverse();
  });
}

/** Puts a part layout in its place among the cheapest. */
function keep(cheapest: Part[], part: Part): void {
  let at = cheapest.length;
  while (at > 0 && cheapest[at - 1].cost > part.cost) at--;
  cheapest.splice(at, 0, part);
  if (cheapest.length > KEPT) cheapest.pop();
}

/** The ways to divide a row that cost least, in the order of their costs. */
export function cheapWays(
  space: RowSpace,
  sort: RowSort,
  costs: Float64Array,
): { readonly path: RowPath; readonly cost: number }[] {
  const [least] = leastBeyond(sort.graph, costs);
  if (least === undefined || least === Infinity) return [];
  let found: readonly { readonly arcs: readonly number[]; readonly cost: number }[] = [];
  for (const spread of SPREADS) {
    found = waysWithin(sort.graph, costs, { blocked: undefined, most: least + spread, limit: 4 * MOST_WAYS }).ways;
    if (found.length >= ENOUGH_WAYS) break;
  }
  return [...found]
    .sort((a, b) => a.cost - b.cost)
    .slice(0, MOST_WAYS)
    .map(({ arcs, cost }) => ({ path: rowPath(space, sort, arcs), cost }));
}
