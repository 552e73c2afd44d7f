import { fixCut, goBack, mostUsedCut, standingOf } from './decisions.js';
import { packInOrder } from './packInOrder.js';
import { type BoardLimits, type KindsOnBoard, packKinds, type Steps } from './packKinds.js';
import type { BoardCut, Relaxation } from './relaxation.js';
import { solve } from './solveRelaxation.js';
import { PARTS } from './wholePrices.js';

const WORK = 2000;
const PLACINGS = 2000;

/**
 * Cuts the pieces of rows that are all fixed as the programme would: board after board by the cut that it uses most, asking it
 * again each time. Nothing where that takes too many boards; another way to cut them may still do.
 */
export function packByProgram(
  relaxation: Relaxation,
  counts: Int32Array,
  limits: BoardLimits,
  most: number,
  steps: Steps,
): readonly KindsOnBoard[] | undefined {
  const left = counts.slice();
  const standing = standingOf(relaxation);
  const before = relaxation.work;
  const cuts: BoardCut[] = [];
  let pieces = left.reduce((sum, count) => sum + count, 0);
  let possible = true;
  while (pieces > 0 && possible) {
    const used = mostUsedCut(relaxation);
    const cut = used && trimmed(used.cut, left);
    if (cut === undefined) break;
    for (const [at, kind] of cut.kinds.entries()) {
      left[kind] -= cut.counts[at];
      pieces -= cut.counts[at];
    }
    cuts.push(cut);
    fixCut(relaxation, cut);
    if (pieces > 0) possible = solve(relaxation, WORK, most, 'best').bound <= most * PARTS;
  }
  goBack(relaxation, standing);
  steps.left -= relaxation.work - before;
  if (pieces > 0 || !isWithin(cuts, limits)) return undefined;
  const boards = cuts.map((cut) => arranged(relaxation, cut));
  return boards.every((board) => board !== undefined) ? (boards as KindsOnBoard[]) : undefined;
}

/** What of a cut is still wanted. */
function trimmed({ stock, kinds, counts }: BoardCut, left: Int32Array): BoardCut | undefined {
  const wanted = kinds.map((kind, at) => Math.min(counts[at], left[kind]));
  if (wanted.every((count) => count === 0)) return undefined;
  return { stock, kinds: kinds.filter((_, at) => wanted[at] > 0), counts: wanted.filter((count) => count > 0) };
}

/** Whether boards of these stocks keep the limits. */
export const isWithin = (cuts: readonly { readonly stock: number }[], { caps, available }: BoardLimits): boolean =>
  caps.every(({ of, most }) => cuts.reduce((sum, { stock }) => sum + of[stock], 0) <= most) &&
  available.every((most, stock) => cuts.filter((cut) => cut.stock === stock).length <= most);

/** Where the pieces of one board lie. */
function arranged({ space }: Relaxation, { stock, kinds, counts }: BoardCut): KindsOnBoard | undefined {
  const { problem } = space;
  const wanted = new Int32Array(space.kinds.length);
  for (const [at, kind] of kinds.entries()) wanted[kind] = counts[at];
  const quick = packInOrder(problem.stocks, space.kinds, wanted, 1);
  if (quick !== undefined && quick[0].stock === stock) return quick[0];
  const one = {
    caps: [{ of: problem.stocks.map(() => 1), most: 1 }],
    available: problem.stocks.map((_, at) => (at === stock ? 1 : 0)),
  };
  const area = {
    kinds: Float64Array.from(space.kinds, ({ size, width }) => size * width),
    boards: problem.stocks.map(({ length, width, kerf }) => (length + kerf) * (width + kerf)),
  };
  const packed = packKinds(problem.stocks, space.kinds, wanted, one, [area], { left: PLACINGS });
  return typeof packed === 'string' ? undefined : packed[0];
}
