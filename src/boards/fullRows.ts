import type { PlacementProblem } from './placementProblem.js';
import type { Reach } from './reachOf.js';

/** Widths of boards, widest first; those of offcuts only where there is nothing else. */
export function wholeWidths({ stocks }: PlacementProblem): number[] {
  const bought = stocks.filter(({ board }) => board.atHand !== true);
  return [...new Set((bought.length > 0 ? bought : stocks).map(({ width }) => width))].sort((a, b) => b - a);
}

/** Multisets of stock widths that leave room for at most two ripped rows, widest first. */
export function fullRows(problem: PlacementProblem, { low, high, sides }: Reach): number[][] {
  const widths = wholeWidths(problem);
  const { wallGap } = problem.rules;
  const room = high - low + sides * (wallGap.nominal - wallGap.least);
  const found: number[][] = [];
  const extend = (rows: number[], used: number, from: number): void => {
    if (room - used < 2 * widths[0]) found.push(rows);
    for (let i = from; i < widths.length; i++) {
      const next = used + widths[i] + problem.rules.edgeGap;
      if (next - problem.rules.edgeGap <= room) extend([...rows, widths[i]], next, i);
    }
  };
  extend([], 0, 0);
  return found;
}

/** Widths of the first of two ripped rows that together take `pair`: both alike, and the other one as narrow as it may be. */
export const outermostWidths = (pair: number, least: number): number[] => [
  ...new Set([Math.ceil(pair / 2), Math.max(pair - least, Math.ceil(pair / 2))]),
];

/** Widths of the first of two ripped rows that together take `pair`, the wider one first. */
export function firstWidths(problem: PlacementProblem, pair: number, least: number): number[] {
  const half = Math.ceil(pair / 2);
  const found = new Set([half, pair - least]);
  // No board gives a row more strips than the row has pieces.
  const mostPieces = Math.max(...problem.parts.map(({ joists }) => joists.length)) + 1;
  for (const { width, kerf } of problem.stocks) {
    const most = Math.min(mostPieces, Math.floor((width + kerf) / (least + kerf)));
    for (let a = 0; a <= most; a++) {
      for (let b = 0; a + b <= most; b++) {
        if (a === b) continue;
        // a (first + kerf) + b (pair - first + kerf) <= width + kerf
        const limit = (width + kerf - (a + b) * kerf - b * pair) / (a - b);
        found.add(a > b ? Math.floor(limit) : Math.ceil(limit));
      }
    }
  }
  return [...found].filter((first) => first >= half && pair - first >= least).sort((a, b) => a - b);
}

type AddRows = (widths: readonly number[], gap: number) => void;

/** Rows on both sides of these full ones, which together take `pair`, the first of them so wide at least and at most. */
type AddPairs = (full: readonly number[], pair: number, first: { readonly from: number; readonly to: number }) => void;

export function eachFullRows(problem: PlacementProblem, reach: Reach, add: AddRows, addPairs: AddPairs): void {
  for (const full of fullRows(problem, reach)) {
    const used = full.reduce((sum, width) => sum + width, 0);
    addAround(problem, full, reach.high - reach.low - used - full.length * problem.rules.edgeGap, reach, add, addPairs);
  }
}

/** All rows that go with these full ones, `rest` being what is left beyond them and the gaps after each of them. */
function addAround(
  problem: PlacementProblem,
  full: readonly number[],
  rest: number,
  { sides }: Reach,
  add: AddRows,
  addPairs: AddPairs,
): void {
  const { wallGap, edgeGap, rowWidth } = problem.rules;
  const widest = Math.max(...problem.stocks.map((stock) => stock.width));
  const least = Math.max(rowWidth, 1);
  // With full rows only, the last of them has no gap after it.
  const spare = rest + edgeGap;
  const gapThen = wallGap.nominal + (sides === 0 ? 0 : Math.floor(spare / sides));
  const gapBeyond = wallGap.nominal + (sides === 0 ? 0 : Math.ceil(spare / sides));
  if (full.length > 0 && (sides > 0 || spare === 0) && gapThen >= wallGap.least && gapBeyond <= wallGap.greatest)
    add(full, gapThen);
  if (rest >= least && rest < widest) add([...full, rest], wallGap.nominal);
  else if (rest < least && rest > 0 && rest + sides * (wallGap.nominal - wallGap.least) >= least) {
    add([...full, least], wallGap.nominal - Math.ceil((least - rest) / sides));
  }
  const pair = rest - edgeGap;
  const from = Math.max(least, pair - widest + 1);
  if (from <= pair - from) addPairs(full, pair, { from, to: pair - from });
}
