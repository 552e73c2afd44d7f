import { blockedBy } from './jointConflicts.js';
import { leastBeyond, type RowPath, rowPath, waysWithin } from './rowPath.js';
import type { RowSort, RowSpace } from './rowSpace.js';

/** Ways to divide a row that are thought of, and part layouts that are kept from row to row. */
const ENOUGH_WAYS = 40;
const MOST_WAYS = 60;
const KEPT = 24;
/** How much dearer than the cheapest a way may be, in boards; the first that gives enough ways. */
const SPREADS = [0.01, 0.05, 0.15, 0.4, 1];

interface Part {
  readonly paths: readonly RowPath[];
  readonly cost: number;
}

/** Divisions of all rows that cost little: row after row the cheapest part layouts are kept. Nothing is proven by what is left out. */
export function spreadRows(space: RowSpace, costs: readonly Float64Array[]): (readonly RowPath[])[] {
  const ways = space.groups.map(({ sort }) => cheapWays(space, sort, costs[sort.group]));
  let parts: Part[] = [{ paths: [], cost: 0 }];
  for (const [row, sort] of space.sorts.entries()) {
    const next: Part[] = [];
    for (const { paths, cost } of parts) {
      const blocked = row === 0 ? undefined : blockedBy(space.set.conflicts[row - 1], paths[row - 1]);
      for (const way of ways[sort.group]) {
        if (blocked !== undefined && way.path.bits.some((bits, word) => (bits & blocked[word]) !== 0)) continue;
        next.push({ paths: [...paths, way.path], cost: cost + way.cost });
      }
    }
    parts = next.sort((a, b) => a.cost - b.cost).slice(0, KEPT);
  }
  return parts.map(({ paths }) => paths);
}

function cheapWays(space: RowSpace, sort: RowSort, costs: Float64Array): { readonly path: RowPath; readonly cost: number }[] {
  const [least] = leastBeyond(sort.graph, costs);
  if (least === undefined || least === Infinity) return [];
  let found: readonly { readonly arcs: readonly number[]; readonly cost: number }[] = [];
  for (const spread of SPREADS) {
    found = waysWithin(sort.graph, costs, undefined, least + spread, 4 * MOST_WAYS).ways;
    if (found.length >= ENOUGH_WAYS) break;
  }
  return [...found]
    .sort((a, b) => a.cost - b.cost)
    .slice(0, MOST_WAYS)
    .map(({ arcs, cost }) => ({ path: rowPath(space, sort, arcs), cost }));
}
