import { meets, type RowsToLay } from './chain.js';
import { blockedBy } from './jointConflicts.js';
import { type RowPattern, rowPatterns } from './rowPatterns.js';

/** Patterns of a row that are looked at, and part layouts that are kept from row to row: few lead elsewhere than many. */
const MOST_PATTERNS = 120;
const KEPT = [16, 40] as const;

interface Part {
  readonly patterns: readonly RowPattern[];
  readonly cost: number;
}

/**
 * Divisions of all rows that cost little, by each of these costs in turn: row after row, the cheapest part layouts are kept.
 * Nothing is proven by what they leave out.
 */
export function* likelyRows(rows: RowsToLay, costs: readonly (readonly Float64Array[])[]): Generator<readonly RowPattern[]> {
  const lists = rows.graphs.map((graph, row) => {
    const alike = rows.graphs.findIndex((each, at) => each === graph && costs.every((arcs) => arcs[at] === arcs[row]));
    return { alike, graph };
  });
  const patterns: RowPattern[][] = [];
  for (const [row, { alike, graph }] of lists.entries()) {
    const own = costs.map((arcs) => arcs[row]);
    const caps = costs.map(() => Number.MAX_SAFE_INTEGER);
    patterns.push(
      alike < row ? patterns[alike] : [...rowPatterns({ graph, costs: own, caps }, rows.words, MOST_PATTERNS).patterns],
    );
  }
  for (const kept of KEPT) {
    for (let cost = 0; cost < costs.length; cost++) {
      let parts: Part[] = [{ patterns: [], cost: 0 }];
      for (const [row, list] of patterns.entries()) parts = extended(rows, parts, list, row, cost).slice(0, kept);
      for (const part of parts) yield part.patterns;
    }
  }
}

/** Every part layout with one more row, the cheapest of them. */
function extended(rows: RowsToLay, parts: readonly Part[], list: readonly RowPattern[], row: number, cost: number): Part[] {
  const next: Part[] = [];
  for (const part of parts) {
    const blocked = row === 0 ? undefined : blockedBy(rows.conflicts[row - 1], part.patterns[row - 1]);
    for (const pattern of list) {
      if (blocked !== undefined && meets(pattern.bits, blocked)) continue;
      next.push({ patterns: [...part.patterns, pattern], cost: part.cost + pattern.costs[cost] });
    }
  }
  return next.sort((a, b) => a.cost - b.cost);
}
