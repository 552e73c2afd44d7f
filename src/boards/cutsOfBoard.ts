import type { PackedBoard, WantedPiece } from './laid.js';
import { sizeFrom } from './pieceKinds.js';
import type { Stock } from './stocksOf.js';

/** Where things lie on a board, in grid steps from its low end and its low edge. */
export interface BoardPlan {
  /** Per piece of the board, by its index among the wanted. */
  readonly places: ReadonlyMap<number, Place>;
  readonly cuts: readonly GridCut[];
  readonly offcuts: readonly Place[];
}

export interface Place {
  readonly along: number;
  readonly across: number;
  readonly length: number;
  readonly width: number;
}

export interface GridCut {
  readonly kind: 'cross' | 'rip';
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

/**
 * How a board is cut: whole pieces from its low end, then strips. Factory ends go to butt joints and bound edges to the next
 * row where the board has any left, cut ones to the wall. A piece that is no rectangle is cut from the one about it.
 */
export function cutsOf(wanted: readonly WantedPiece[], board: PackedBoard): BoardPlan {
  const { stock, whole, strips } = board;
  const plan = { places: new Map<number, Place>(), cuts: [] as GridCut[], offcuts: [] as Place[] };
  const full = { across: 0, width: stock.width };
  const used = layAlong(plan, stock, wanted, whole, { from: 0, ...full, toEnd: strips.length === 0 });
  if (strips.length === 0) return plan;
  const from = whole.length === 0 ? 0 : used + stock.kerf;
  // The strip at the low edge keeps the low bound edge: it suits a row whose ripped edge faces the high wall.
  const order = [...strips].sort((a, b) => b.width - a.width);
  const high = order.find(({ pieces }) => pieces.every((index) => wanted[index].rippedLow));
  let across = 0;
  for (const strip of order) {
    if (strip === high) continue;
    layAlong(plan, stock, wanted, strip.pieces, { from, across, width: strip.width, toEnd: true });
    across += strip.width;
    if (across < stock.width) plan.cuts.push({ kind: 'rip', at: across, from, to: stock.length });
    across = Math.min(stock.width, across + stock.kerf);
  }
  let top = stock.width;
  if (high !== undefined) {
    top -= high.width;
    layAlong(plan, stock, wanted, high.pieces, { from, across: top, width: high.width, toEnd: true });
    const ripped = plan.cuts.some(
      ({ kind, at, to }) => kind === 'rip' && to === stock.length && at <= top && top - at <= stock.kerf,
    );
    if (top > 0 && !ripped) plan.cuts.push({ kind: 'rip', at: top, from, to: stock.length });
    top = Math.max(across, top - (ripped ? 0 : stock.kerf));
  }
  if (top > across) plan.offcuts.push({ along: from, across, length: stock.length - from, width: top - across });
  return plan;
}

interface Lane {
  readonly from: number;
  readonly across: number;
  readonly width: number;
  /** Whether nothing else follows, so that the last piece may use the board's high end. */
  readonly toEnd: boolean;
}

/** Lays pieces one after another along a board or a strip of it; says where the last of those at the low end stops. */
function layAlong(
  plan: { places: Map<number, Place>; cuts: GridCut[]; offcuts: Place[] },
  stock: Stock,
  wanted: readonly WantedPiece[],
  pieces: readonly number[],
  { from, across, width, toEnd }: Lane,
): number {
  const order = [...pieces].sort((a, b) => endsAtWall(wanted[a]) - endsAtWall(wanted[b]) || a - b);
  const put = (index: number, along: number): number => {
    const length = sizeFrom(stock, wanted[index].piece);
    // A piece of a narrower row may follow in a strip, and is ripped to its own width.
    const { cutWidth, atHigh } = wanted[index];
    const own = Math.min(width, cutWidth);
    const spare = width - own;
    plan.places.set(index, { along, across: atHigh ? across + spare : across, length, width: own });
    if (spare > 0) plan.cuts.push({ kind: 'rip', at: atHigh ? across + spare : across + own, from: along, to: along + length });
    const beside = { along, across: atHigh ? across : across + own + stock.kerf, length, width: spare - stock.kerf };
    if (beside.width > 0) plan.offcuts.push(beside);
    return along + length;
  };
  const crossCut = (at: number): void => {
    plan.cuts.push({ kind: 'cross', at, from: across, to: across + width });
  };
  const lastIndex = order[order.length - 1];
  const flush = toEnd && order.length > 0 && endsAtWall(wanted[lastIndex]) > 0 && (order.length > 1 || from === 0);
  let at = from;
  let used = from;
  for (const index of flush ? order.slice(0, -1) : order) {
    used = put(index, at);
    if (used < stock.length) crossCut(used);
    at = Math.min(stock.length, used + stock.kerf);
  }
  if (!toEnd) return used;
  let end = stock.length;
  if (flush) {
    end = stock.length - sizeFrom(stock, wanted[lastIndex].piece);
    put(lastIndex, end);
    if (end > at) {
      crossCut(end);
      end = Math.max(at, end - stock.kerf);
    }
  }
  if (end > at) plan.offcuts.push({ along: at, across, length: end - at, width });
  return used;
}

/** 1 for a piece whose high end is a butt joint and whose low end is not: it would like the board's high end; -1 the other way. */
function endsAtWall({ lowJoint, highJoint }: WantedPiece): number {
  return (highJoint ? 1 : 0) - (lowJoint ? 1 : 0);
}
