import { type BoardCut, cutEntry, type Entry, pathEntry, type Relaxation, SMALL } from './relaxation.js';
import type { RowPath } from './rowPath.js';

/** The column of those known that would save most. */
export function cheapestKnown(relaxation: Relaxation): (Entry & { reduced: number }) | undefined {
  const { present, kindRow, capRow, stockRow, shorter, program } = relaxation;
  const { prices } = program;
  let least = -SMALL;
  let best: Entry | undefined;
  for (const kind of present) {
    const reduced = prices[kindRow[kind]];
    if (reduced < least) {
      least = reduced;
      best = { cost: 0, rows: [kindRow[kind]], values: [-1] };
    }
    // A longer piece serves for the next shorter one.
    const next = shorter[kind];
    if (next < 0 || kindRow[next] < 0 || reduced - prices[kindRow[next]] >= least) continue;
    least = reduced - prices[kindRow[next]];
    best = { cost: 0, rows: [kindRow[kind], kindRow[next]], values: [-1, 1] };
  }
  for (const row of [...capRow, ...stockRow]) {
    if (row < 0 || -prices[row] >= least) continue;
    least = -prices[row];
    best = { cost: 0, rows: [row], values: [1] };
  }
  const cut = cheapestCut(relaxation, least);
  const path = cheapestPath(relaxation, Math.min(least, cut.reduced));
  if (path.at !== undefined) return { ...pathEntry(relaxation, path.at), reduced: path.reduced };
  if (cut.at !== undefined) return { ...cutEntry(relaxation, cut.at), reduced: cut.reduced };
  return best && { ...best, reduced: least };
}

interface Cheapest<T> {
  readonly at: T | undefined;
  readonly reduced: number;
}

function cheapestCut(
  { space, program, cuts, kindRow, capRow, stockRow, caps, objective }: Relaxation,
  below: number,
): Cheapest<BoardCut> {
  const { prices } = program;
  let least = below;
  let best: BoardCut | undefined;
  const ofStock = space.problem.stocks.map((_, stock) => {
    let cost = space.objectives[objective].boards[stock];
    for (let at = 0; at < caps.length; at++) cost -= space.objectives[caps[at].objective].boards[stock] * prices[capRow[at]];
    return stockRow[stock] >= 0 ? cost - prices[stockRow[stock]] : cost;
  });
  for (const cut of cuts.values()) {
    let reduced = ofStock[cut.stock];
    const { kinds, counts } = cut;
    for (let at = 0; at < kinds.length; at++) reduced -= counts[at] * prices[kindRow[kinds[at]]];
    if (reduced >= least) continue;
    least = reduced;
    best = cut;
  }
  return { at: best, reduced: least };
}

function cheapestPath({ program, paths, kindRow, capRow, caps, objective, open }: Relaxation, below: number): Cheapest<RowPath> {
  const { prices } = program;
  let least = below;
  let best: RowPath | undefined;
  for (const path of paths.values()) {
    const { kinds, counts, costs, sort } = path;
    if (open[sort.group] === 0) continue;
    let reduced = costs[objective] - prices[sort.group];
    for (let at = 0; at < kinds.length; at++) reduced += counts[at] * prices[kindRow[kinds[at]]];
    for (let at = 0; at < caps.length; at++) reduced -= costs[caps[at].objective] * prices[capRow[at]];
    if (reduced >= least) continue;
    least = reduced;
    best = path;
  }
  return { at: best, reduced: least };
}
