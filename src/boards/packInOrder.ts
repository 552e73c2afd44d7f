import type { KindsOnBoard } from './packKinds.js';
import type { PieceKind } from './pieceKinds.js';
import type { Stock } from './stocksOf.js';

interface Lane {
  readonly width: number;
  readonly kinds: number[];
  rest: number;
}

interface Blank {
  readonly stock: number;
  readonly kerf: number;
  readonly whole: number[];
  /** Length that no whole piece has taken, with one cut. */
  rest: number;
  readonly lanes: Lane[];
  /** Width that no strip has taken, with one cut. */
  across: number;
}

/**
 * Cuts pieces from boards without looking back: the widest and longest first, each where it leaves least, or else from a new
 * board of the first stock that can give it. Nothing where that takes more than `most` boards, or more of a stock than there are.
 */
export function packInOrder(
  stocks: readonly Stock[],
  kinds: readonly PieceKind[],
  counts: Int32Array,
  most: number,
): readonly KindsOnBoard[] | undefined {
  const boards: Blank[] = [];
  const left = stocks.map(({ board }) => board.available ?? Infinity);
  // What is at hand is cut first.
  const order = stocks
    .map((_, at) => at)
    .sort((a, b) => Number(stocks[b].board.atHand ?? false) - Number(stocks[a].board.atHand ?? false));
  for (let kind = 0; kind < counts.length; kind++) {
    const piece = kinds[kind];
    for (let count = counts[kind]; count > 0; count--) {
      if (placeWhole(boards, kind, piece) || placeStrip(boards, kind, piece)) continue;
      const stock = order.find((at) => left[at] > 0 && piece.sizes[at] < Infinity);
      if (stock === undefined || boards.length >= most) return undefined;
      left[stock]--;
      const { length, width, kerf } = stocks[stock];
      const board: Blank = { stock, kerf, whole: [], rest: length + kerf, lanes: [], across: width + kerf };
      boards.push(board);
      if (!placeWhole([board], kind, piece)) open(board, kind, piece);
    }
  }
  return boards.map(({ stock, whole, lanes }) => ({
    stock,
    whole,
    strips: lanes.map((lane) => ({ width: lane.width, kinds: lane.kinds })),
  }));
}

/** Beside other whole pieces; whole pieces come before all strips. */
function placeWhole(boards: readonly Blank[], kind: number, { sizes, alone }: PieceKind): boolean {
  let best: Blank | undefined;
  for (const board of boards) {
    if (!alone[board.stock] || board.lanes.length > 0 || board.rest < sizes[board.stock]) continue;
    if (best === undefined || board.rest < best.rest) best = board;
  }
  if (best === undefined) return false;
  best.whole.push(kind);
  best.rest -= sizes[best.stock];
  return true;
}

/** In a strip that is there, or else as a new one. */
function placeStrip(boards: readonly Blank[], kind: number, piece: PieceKind): boolean {
  const { sizes, alone, width } = piece;
  const able = boards.filter(({ stock }) => !alone[stock]);
  let lane: { readonly in: Lane; readonly size: number } | undefined;
  for (const { stock, lanes } of able) {
    for (const each of lanes) {
      if (each.width < width || each.rest < sizes[stock] || (lane !== undefined && each.rest >= lane.in.rest)) continue;
      lane = { in: each, size: sizes[stock] };
    }
  }
  if (lane !== undefined) {
    lane.in.kinds.push(kind);
    lane.in.rest -= lane.size;
    return true;
  }
  let best: Blank | undefined;
  for (const board of able) {
    if (board.rest < sizes[board.stock] || board.across < width + board.kerf) continue;
    if (best === undefined || board.rest < best.rest) best = board;
  }
  if (best === undefined) return false;
  open(best, kind, piece);
  return true;
}

function open(board: Blank, kind: number, { sizes, width }: PieceKind): void {
  board.lanes.push({ width, kinds: [kind], rest: board.rest - sizes[board.stock] });
  board.across -= width + board.kerf;
}
