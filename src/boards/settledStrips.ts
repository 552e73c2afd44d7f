import { widestAcross } from './likelyStrips.js';
import type { SettledStrips } from './relaxation.js';
import { countsOf, type RowPath } from './rowPath.js';
import type { RowSpace } from './rowSpace.js';
import { stripBlocks } from './stripBlocks.js';
import { blankOf } from './waysToCut.js';

/** Whether something may go beside pieces of a kind, on some stock. */
const isStrip = ({ kinds }: RowSpace, kind: number): boolean => kinds[kind].alone.some((alone) => !alone);

/** The sorts of rows that have pieces beside which something may go. */
export const sortsWithStrips = (space: RowSpace): number[] =>
  space.groups.flatMap(({ sort }, group) => (sort.kinds.some((kind) => kind >= 0 && isStrip(space, kind)) ? [group] : []));

/** The strips of rows that are fixed, no others being open that have any. */
export function settledStrips(space: RowSpace, fixed: readonly RowPath[]): SettledStrips {
  const { problem, kinds } = space;
  const counts = Float64Array.from(countsOf(kinds.length, fixed), (count, kind) => (isStrip(space, kind) ? count : Infinity));
  const ofStock = problem.stocks.map((each, stock) => {
    const names = kinds.flatMap(({ alone, sizes }, kind) =>
      counts[kind] > 0 && !alone[stock] && sizes[stock] < Infinity ? [kind] : [],
    );
    const pieces = {
      names,
      widths: names.map((kind) => kinds[kind].width),
      sizes: names.map((kind) => kinds[kind].sizes[stock]),
      counts: names.map((kind) => counts[kind]),
    };
    const blocks = stripBlocks(blankOf(each), pieces);
    return { pieces, blocks, across: blocks === undefined ? widestAcross(each, pieces.widths) : each.width + each.kerf };
  });
  return { counts, ofStock };
}
