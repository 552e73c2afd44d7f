import { cutWorthMost } from './cutWorthMost.js';
import { pricesOfArcs } from './pricesOfArcs.js';
import { type Guess, isLimited, type Relaxation } from './relaxation.js';
import { leastBeyond } from './rowPath.js';
import type { RowSort } from './rowSpace.js';

/** Prices made whole, and what they prove. */
export interface WholePrices {
  /** No layout costs less; in `PARTS` of one. */
  readonly bound: number;
  /** Per sort of row: the least that a row can come to, and what each arc does. */
  readonly least: readonly number[];
  readonly arcs: readonly Float64Array[];
  /** Per kind. */
  readonly kinds: Float64Array;
  /** Per stock: what a board may carry. */
  readonly boards: readonly number[];
}

/** Whole parts of one unit, by which prices are judged. */
export const PARTS = 2 ** 22;

/** What an absent kind counts for: as much as any present one that could be cut from it. */
export function pricesOfKinds(
  { space, present, kindRow, served, strips }: Relaxation,
  priceOf: (kind: number) => number,
): Float64Array {
  const values = new Float64Array(space.kinds.length);
  for (const kind of present) values[kind] = priceOf(kind);
  if (present.length === values.length) return values;
  const most = values.slice();
  // Of strips that are settled nothing more is cut.
  for (const kind of present) if (isLimited(strips, kind)) most[kind] = 0;
  for (let kind = values.length - 1; kind >= 0; kind--) {
    for (const other of served[kind]) if (most[other] > most[kind]) most[kind] = most[other];
    if (kindRow[kind] < 0 && !isLimited(strips, kind)) values[kind] = most[kind];
  }
  return values;
}

/** What each arc comes to by some prices. */
export function arcPrices(
  { objective, caps }: Relaxation,
  sort: RowSort,
  ofKind: Float64Array,
  unit: number,
  ofCap: readonly number[],
): Float64Array {
  const costs = sort.costs[objective];
  const arcs = pricesOfArcs(sort, ofKind);
  for (let arc = 0; arc < arcs.length; arc++) arcs[arc] += costs[arc] * unit;
  for (let at = 0; at < caps.length; at++) {
    if (ofCap[at] === 0) continue;
    const spent = sort.costs[caps[at].objective];
    for (let arc = 0; arc < arcs.length; arc++) arcs[arc] += ofCap[at] * spent[arc];
  }
  return arcs;
}

/** What an objective and the prices of its caps make of a board. */
export const boardCost = (
  { space, objective, caps }: Relaxation,
  stock: number,
  unit: number,
  ofCap: readonly number[],
  ofStock: number,
): number =>
  caps.reduce(
    (sum, cap, at) => sum + ofCap[at] * space.objectives[cap.objective].boards[stock],
    space.objectives[objective].boards[stock] * unit + ofStock,
  );

/** What prices prove that no board is worth more than. */
export function provenBy(
  relaxation: Relaxation,
  kinds: Float64Array,
  unit: number,
  ofCap: readonly number[],
  ofStock: readonly number[],
) {
  const { space, caps, objective } = relaxation;
  let bound = space.objectives[objective].fixed * unit;
  for (const [at, cap] of caps.entries()) bound -= ofCap[at] * (cap.most - space.objectives[cap.objective].fixed);
  for (const [stock, { board }] of space.problem.stocks.entries())
    if (ofStock[stock] > 0) bound -= ofStock[stock] * (board.available ?? 0);
  const arcs = space.groups.map(({ sort }) => arcPrices(relaxation, sort, kinds, unit, ofCap));
  const least = space.groups.map(({ sort }, at) => leastBeyond(sort.graph, arcs[at])[0]);
  for (const [at, open] of relaxation.open.entries()) if (open > 0) bound += open * least[at];
  for (const path of relaxation.fixed) {
    const of = arcs[path.sort.group];
    for (const arc of path.arcs) bound += of[arc];
  }
  for (const cut of relaxation.made) {
    bound += boardCost(relaxation, cut.stock, unit, ofCap, ofStock[cut.stock]);
    for (const [at, kind] of cut.kinds.entries()) bound -= cut.counts[at] * kinds[kind];
  }
  return { bound, arcs, least };
}

export function wholePrices(relaxation: Relaxation): WholePrices {
  const { space, mostBoards: most } = relaxation;
  const best = relaxation.best as Guess;
  const whole = (value: number): number => Math.max(0, Math.floor(value * PARTS));
  const kinds = best.kinds.map(whole);
  const ofCap = best.caps.map(whole);
  const ofStock = best.stocks.map(whole);
  let excess = 0;
  const boards = space.problem.stocks.map((_, stock) => {
    const cost = boardCost(relaxation, stock, PARTS, ofCap, ofStock[stock]);
    const over = Math.max(0, cutWorthMost(relaxation, stock, kinds).most - cost);
    excess += over * most;
    return cost + over;
  });
  const { bound, arcs, least } = provenBy(relaxation, kinds, PARTS, ofCap, ofStock);
  return { bound: bound - excess, least, arcs, kinds, boards };
}
