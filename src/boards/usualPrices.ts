import { type LengthWeight, lengthWeights, weightOf } from './lengthWeights.js';
import type { PieceKind } from './pieceKinds.js';
import { leastKerf, longestOf } from './pieceKinds.js';
import type { PlacementProblem } from './placementProblem.js';

/** Prices of pieces such that those of one board are never worth more than the board. */
export interface UsualPrices {
  /** Per kind. */
  readonly kinds: Float64Array;
  /** Per stock. */
  readonly boards: readonly number[];
}

/** Weightings of lengths, and those of widths that each is paired with. */
const MOST_LENGTHS = 12;
const MOST_WIDTHS = 2;

/**
 * Prices that are known beforehand to be true ones: a weight of the length times one of the width, each by a dual-feasible
 * function. Pieces side by side over any line across a board, and strips along any line down it, never pass the whole.
 */
export function usualPrices(problem: PlacementProblem, kinds: readonly PieceKind[]): UsualPrices[] {
  const { stocks, rules } = problem;
  const kerf = leastKerf(problem);
  const long = longestOf(problem).length + kerf;
  const wide = Math.max(...stocks.map(({ width }) => width)) + kerf;
  const lengths = weighed([...new Set(kinds.map(({ size }) => size))], long, MOST_LENGTHS);
  const widths = weighed([...new Set(kinds.map(({ width }) => width + kerf))], wide, MOST_WIDTHS);
  // A piece a little over a shorter board may still be made of it.
  const reach = stocks.map(({ length }) => Math.min(long, length + kerf + rules.greatestExcess));
  return lengths.flatMap((ofLength) => {
    const byLength = kinds.map(({ size }) => weightOf(ofLength, size, long));
    return widths.map((ofWidth) => ({
      kinds: new Float64Array(kinds.map(({ width }, kind) => byLength[kind] * weightOf(ofWidth, width + kerf, wide))),
      boards: stocks.map(({ width }, stock) => weightOf(ofLength, reach[stock], long) * weightOf(ofWidth, width + kerf, wide)),
    }));
  });
}

/** Shares of a board that differ by less are the same. */
const HAIR = 1e-9;

/** The sharpest of those that tell the sizes apart differently. */
function weighed(sizes: readonly number[], capacity: number, most: number): LengthWeight[] {
  const judged = lengthWeights(sizes, capacity).map((weight) => {
    const whole = weightOf(weight, capacity, capacity);
    const shares = sizes.map((size) => weightOf(weight, size, capacity) / whole);
    return { weight, shares, sharp: shares.reduce((sum, share) => sum + share, 0) };
  });
  judged.sort((a, b) => b.sharp - a.sharp);
  const kept: typeof judged = [];
  for (const each of judged) {
    const isKnown = kept.some(({ shares }) => shares.every((share, at) => Math.abs(share - each.shares[at]) < HAIR));
    if (!isKnown) kept.push(each);
    if (kept.length === most) break;
  }
  return kept.map(({ weight }) => weight);
}
