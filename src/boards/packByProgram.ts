import { fixCut, goBack, mostUsedCut, standingOf } from './decisions.js';
import { packInOrder } from './packInOrder.js';
import {
  areaOf,
  type BoardLimits,
  type KindsOnBoard,
  PLACINGS_OF_STEP,
  packKinds,
  type Shares,
  type Steps,
} from './packKinds.js';
import type { BoardCut, Relaxation } from './relaxation.js';
import { solve } from './solveRelaxation.js';
import { PARTS } from './wholePrices.js';

const WORK = 2000;
const PLACINGS = 2000;
/** So few boards are cut in every way there is, in so many placings. */
const FEW = 5;
const PLACINGS_OF_FEW = 3000;

/**
 * Cuts the pieces of rows that are all fixed as the programme would: board after board by the cut that it uses most, asking it
 * again each time, and the last few in whatever way there is. Nothing where that takes too many boards; another way to cut them
 * may still do.
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
  let rest: readonly KindsOnBoard[] = [];
  while (pieces > 0) {
    const used = mostUsedCut(relaxation);
    const cut = used && trimmed(used.cut, left);
    if (cut === undefined) break;
    for (const [at, kind] of cut.kinds.entries()) {
      left[kind] -= cut.counts[at];
      pieces -= cut.counts[at];
    }
    cuts.push(cut);
    fixCut(relaxation, cut);
    if (pieces === 0) break;
    const prices = solve(relaxation, WORK, most, 'best');
    if (prices.bound > most * PARTS) break;
    const beyond = beyondCuts(limits, cuts);
    if (beyond.caps.some((cap) => cap.most > FEW * Math.min(...cap.of))) continue;
    rest = packRest(relaxation, left, beyond, prices, steps);
    if (rest.length > 0) pieces = 0;
    break;
  }
  goBack(relaxation, standing);
  steps.left -= relaxation.work - before;
  if (pieces > 0 || !isWithin([...cuts, ...rest], limits)) return undefined;
  const boards = cuts.map((cut) => arranged(relaxation, cut));
  return boards.every((board) => board !== undefined) ? [...(boards as KindsOnBoard[]), ...rest] : undefined;
}

/** What boards there may be besides these. */
const beyondCuts = ({ caps, available }: BoardLimits, cuts: readonly BoardCut[]): BoardLimits => ({
  caps: caps.map(({ of, most }) => ({ of, most: cuts.reduce((left, { stock }) => left - of[stock], most) })),
  available: available.map((most, stock) => most - cuts.filter((cut) => cut.stock === stock).length),
});

/** The last boards. */
function packRest(
  { space: { problem, kinds } }: Relaxation,
  left: Int32Array,
  limits: BoardLimits,
  prices: Shares,
  steps: Steps,
): readonly KindsOnBoard[] {
  const allowed = { left: Math.min(PLACINGS_OF_FEW, Math.max(steps.left, 1) * PLACINGS_OF_STEP) };
  const before = allowed.left;
  const packed = packKinds(problem.stocks, kinds, left, limits, [areaOf(problem, kinds), prices], allowed);
  steps.left -= (before - allowed.left) / PLACINGS_OF_STEP;
  return typeof packed === 'string' ? [] : packed;
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
  const packed = packKinds(problem.stocks, space.kinds, wanted, one, [areaOf(problem, space.kinds)], { left: PLACINGS });
  return typeof packed === 'string' ? undefined : packed[0];
}
