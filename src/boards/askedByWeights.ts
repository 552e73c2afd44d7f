import { type LengthWeight, weightOf } from './lengthWeights.js';
import type { RangedRow } from './rowRange.js';
import type { AnyRows } from './stretchesOfParts.js';

/**
 * Whether weights of lengths, times weights of widths, ask for so many boards of rows like these. Whole numbers throughout; what is at
 * hand may carry all that it can, and counts for none.
 */
export function askedByWeights(any: AnyRows, rows: readonly RangedRow[], boards: number): boolean {
  const { lengths, kerf, wide } = any;
  return widthWeights(any, rows).some((ofWidth) => {
    const sums = lengths.map(() => 0);
    for (const row of rows) addRow(row, (width) => weightOf(ofWidth, width, wide), kerf, sums);
    return lengths.some((ofLength, at) => {
      const { most, atHand } = boardsBy(any, ofLength, ofWidth);
      return sums[at] - atHand > (boards - 1) * most;
    });
  });
}

/** What the heaviest board to be bought may carry, and what all that is at hand may. */
function boardsBy({ problem: { stocks, rules }, long, wide }: AnyRows, ofLength: LengthWeight, ofWidth: LengthWeight) {
  let [most, atHand] = [1, 0];
  for (const { board, length, width, kerf } of stocks) {
    // A piece a little over a shorter board may still be made of it.
    const reach = Math.min(long, length + kerf + rules.greatestExcess);
    const carries = weightOf(ofLength, reach, long) * weightOf(ofWidth, width + kerf, wide);
    if (board.atHand) atHand += carries * (board.available ?? 1);
    else most = Math.max(most, carries);
  }
  return { most, atHand };
}

/**
 * Adds to each sum what a row comes to, its slabs taken together in the way that tells most. A piece that reaches over several
 * stretches weighs no less than its parts together, with one cut between them.
 */
function addRow({ held }: RangedRow, ofWidth: (width: number) => number, kerf: number, sums: number[]): void {
  const weights = held.map(({ height }) => ({ first: ofWidth(height + kerf), further: ofWidth(height) }));
  const end = held.reduce((last, { stretch }) => Math.max(last, stretch.to + 1), 0);
  for (let at = 0; at < sums.length; at++) {
    const most = new Float64Array(end + 1);
    let next = 0;
    for (let slab = 0; slab <= end; slab++) {
      if (slab > 0) most[slab] = Math.max(most[slab], most[slab - 1]);
      for (; next < held.length && held[next].from === slab; next++) {
        const { stretch } = held[next];
        const weight = most[slab] === 0 ? weights[next].first : weights[next].further;
        most[stretch.to + 1] = Math.max(most[stretch.to + 1], most[slab] + weight * stretch.worth[at]);
      }
    }
    sums[at] += most[end];
  }
}

/** Weights of widths that tell these rows apart. */
function widthWeights({ wide, kerf }: AnyRows, rows: readonly RangedRow[]): LengthWeight[] {
  const widths = new Set(rows.flatMap(({ first, last }) => [first, last].map(({ low, high }) => high - low + kerf)));
  const limits = new Set([...widths].flatMap((width) => [width, wide - width, wide - width + 1]));
  return [
    { family: 'length', least: 0, unit: 0 },
    ...[2, 3, 4].map((unit) => ({ family: 'rounded' as const, least: 0, unit })),
    ...[...limits]
      .filter((width) => width > 0 && 2 * width <= wide)
      .flatMap((limit) => [
        { family: 'forgetting' as const, least: limit, unit: 0 },
        { family: 'counted' as const, least: 0, unit: limit },
      ]),
  ];
}
