import type { PieceKind } from './pieceKinds.js';
import type { Stock } from './stocksOf.js';
import { type Way, waysToCut } from './waysToCut.js';

/**
 * What one board gives: pieces of its whole width one after another from its low end, the rest of its length in strips side by
 * side. A strip is as wide as its first piece; narrower ones may follow in it. Pieces are told by kind.
 */
export interface KindsOnBoard {
  readonly stock: number;
  readonly whole: readonly number[];
  readonly strips: readonly { readonly width: number; readonly kinds: readonly number[] }[];
}

/** The boards there may be. */
export interface BoardLimits {
  readonly boards: number;
  /** Per stock. */
  readonly available: readonly number[];
}

/** A count of steps that several searches may share. */
export interface Steps {
  left: number;
}

/** How much of a board a kind takes, such that what fits on a board together never takes more than it has. */
export interface Shares {
  readonly kinds: Float64Array;
  readonly boards: readonly number[];
}

/**
 * Cuts pieces from at most so many boards. Board after board is cut for the largest piece that is left, the ways that waste
 * least first, and only ways to which no other piece could be added: nothing else needs to be tried. What is left after some
 * boards and could not be cut from the rest is remembered.
 *
 * @returns the boards; `none` when there is no way; `unknown` when the steps ran out first
 */
export function packKinds(
  stocks: readonly Stock[],
  kinds: readonly PieceKind[],
  counts: Int32Array,
  limits: BoardLimits,
  shares: readonly Shares[],
  steps: Steps,
): readonly KindsOnBoard[] | 'none' | 'unknown' {
  const wanted = wantedOf(stocks, kinds, counts, shares);
  const { left, share } = wanted;
  const slack = capacityOf(wanted.boards, limits) - left.reduce((total, count, at) => total + share[at] * count, 0);
  if (slack < 0) return 'none';
  const packing: Packing = {
    stocks,
    wanted,
    // Where there are boards enough of every stock, any board counts as the largest.
    whole: limits.available.every((each) => each >= limits.boards) ? Math.max(...wanted.boards) : undefined,
    available: [...limits.available],
    failed: new Map(),
    chosen: [],
    steps,
    sure: true,
  };
  if (!cut(packing, limits.boards, slack)) return packing.sure ? 'none' : 'unknown';
  return packing.chosen.map(({ stock, way }) => ({
    stock,
    whole: way.whole.map((at) => wanted.kinds[at]),
    strips: way.strips.map((strip) => ({ width: strip.width, kinds: strip.kinds.map((at) => wanted.kinds[at]) })),
  }));
}

/** What the boards that there may be come to by their shares. */
export const capacityOf = (boards: readonly number[], { boards: most, available }: BoardLimits): number =>
  available.every((each) => each >= most)
    ? Math.max(...boards) * most
    : boards.reduce((total, each, stock) => total + each * Math.min(most, available[stock]), 0);

/** The kinds of pieces that are wanted, told by their place among these. */
interface WantedKinds {
  readonly kinds: readonly number[];
  readonly widths: readonly number[];
  /** Per stock. */
  readonly sizes: readonly (readonly number[])[];
  readonly left: number[];
  readonly share: readonly number[];
  readonly boards: readonly number[];
}

/** Kinds that are there at all, with the shares by which they fill boards most. */
function wantedOf(
  stocks: readonly Stock[],
  kinds: readonly PieceKind[],
  counts: Int32Array,
  shares: readonly Shares[],
): WantedKinds {
  const present: number[] = [];
  for (let kind = 0; kind < counts.length; kind++) if (counts[kind] > 0) present.push(kind);
  let tightest = shares[0];
  let most = 0;
  for (const each of shares) {
    let total = 0;
    for (const kind of present) total += each.kinds[kind] * counts[kind];
    const filled = total / Math.max(...each.boards);
    if (filled > most) [tightest, most] = [each, filled];
  }
  return {
    kinds: present,
    widths: present.map((kind) => kinds[kind].width),
    sizes: stocks.map((_, stock) => present.map((kind) => kinds[kind].sizes[stock])),
    left: present.map((kind) => counts[kind]),
    share: present.map((kind) => tightest.kinds[kind]),
    boards: tightest.boards,
  };
}

interface Packing {
  readonly stocks: readonly Stock[];
  readonly wanted: WantedKinds;
  readonly whole: number | undefined;
  readonly available: number[];
  /** Per set of pieces that were left: how many boards were not enough for them. */
  readonly failed: Map<string, number>;
  readonly chosen: { readonly stock: number; readonly way: Way }[];
  readonly steps: Steps;
  sure: boolean;
}

/** Cuts what is left from so many boards, of which no more than `spare` may go to waste. */
function cut(packing: Packing, boards: number, spare: number): boolean {
  const { stocks, wanted, available, failed, steps, whole } = packing;
  const first = wanted.left.findIndex((count) => count > 0);
  if (first < 0) return true;
  if (boards === 0) return false;
  const key = String.fromCharCode(...wanted.left, ...(whole === undefined ? available : []));
  if ((failed.get(key) ?? 0) >= boards) return false;
  for (let stock = 0; stock < stocks.length; stock++) {
    if (available[stock] > 0 && wanted.sizes[stock][first] < Infinity && cutOne(packing, stock, first, boards, spare))
      return true;
  }
  if (steps.left > 0) failed.set(key, boards);
  return false;
}

function cutOne(packing: Packing, stock: number, first: number, boards: number, spare: number): boolean {
  const { stocks, wanted, available, chosen, steps, whole } = packing;
  const { length, width, kerf } = stocks[stock];
  const { ways, all } = waysToCut({ length: length + kerf, width, kerf }, { ...wanted, sizes: wanted.sizes[stock] }, first);
  packing.sure &&= all;
  available[stock]--;
  for (const way of ways) {
    const waste = (whole ?? wanted.boards[stock]) - way.share;
    if (waste > spare) break;
    if (steps.left-- <= 0) {
      packing.sure = false;
      break;
    }
    take(wanted.left, way, -1);
    chosen.push({ stock, way });
    if (cut(packing, boards - 1, spare - waste)) return true;
    chosen.pop();
    take(wanted.left, way, 1);
  }
  available[stock]++;
  return false;
}

function take(left: number[], { whole, strips }: Way, sign: 1 | -1): void {
  for (const at of whole) left[at] += sign;
  for (const strip of strips) for (const at of strip.kinds) left[at] += sign;
}
