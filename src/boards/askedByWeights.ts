import type { AnyRows } from './anyRows.js';
import { type LengthWeight, weightOf } from './lengthWeights.js';
import { leastOf } from './lineAcross.js';
import type { RangedRow } from './rowRange.js';

/**
 * Whether weights of lengths, times weights of widths, ask for so many boards of rows like these. Whole numbers throughout; what is at
 * hand may carry all that it can, and counts for none.
 */
export function askedByWeights(any: AnyRows, rows: readonly RangedRow[], boards: number): boolean {
  const { lengths, kerf, wide } = any;
  return widthWeights(any, rows).some((ofWidth) => {
    const widths = rows.map(({ heights }) => heights.map((height) => (height > 0 ? weightOf(ofWidth, height + kerf, wide) : 0)));
    return lengths.some((ofLength, at) => {
      const { most, atHand } = boardsBy(any, ofLength, ofWidth);
      const sum = rows.reduce((all, { line }, row) => all + worthOf(line, at, widths[row]), 0);
      return sum - atHand > (boards - 1) * most;
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

/** What a row comes to at least by a weight of lengths, its pieces as wide as their slabs. */
function worthOf(line: RangedRow['line'], ofLength: number, widths: readonly number[]): number {
  if (widths.every((width) => width === widths[0])) return (widths[0] ?? 0) * line.worth[ofLength];
  const weights = line.weights[ofLength];
  const least = leastOf(line, ({ height }, at) => (height < 0 ? 0 : weights[at] * widths[height]));
  return least === Infinity ? 0 : least;
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
