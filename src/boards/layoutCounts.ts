import type { BoardStock } from '../survey/boardStock.js';
import { areaM2 } from '../survey/outline.js';
import type { Board, BoardLayout, Piece } from './boardLayout.js';

/** What pieces and boards add up to. */
export type LayoutCounts = Pick<
  BoardLayout,
  'offcuts' | 'boardsBought' | 'boardsByStock' | 'cost' | 'areaM2' | 'wasteAreaM2' | 'cuts'
>;

/** Counts a layout; boards that are cut up already and stock at hand are not counted as bought. */
export function layoutCounts(stocks: readonly BoardStock[], pieces: readonly Piece[], boards: readonly Board[]): LayoutCounts {
  const stockOf = new Map(stocks.map((stock) => [stock.id, stock]));
  const known = boards.map((board) => ({ board, stock: stockOf.get(board.stock) as BoardStock }));
  const bought = known.filter(({ board, stock }) => board.opened !== true && stock.atHand !== true).map(({ stock }) => stock);
  const prices = bought.map(({ price }) => price);
  const area = pieces.reduce((sum, piece) => sum + pieceAreaM2(piece), 0);
  const all = known.reduce((sum, { stock }) => sum + Math.round(stock.length * stock.width), 0) / 1e6;
  return {
    offcuts: boards
      .flatMap((board) => board.offcuts)
      .sort((a, b) => b.length * b.width - a.length * a.width || (a.board < b.board ? -1 : 1)),
    boardsBought: bought.length,
    boardsByStock: stocks
      .map(({ id }) => ({ stock: id, count: bought.filter((stock) => stock.id === id).length }))
      .filter(({ count }) => count > 0),
    ...(prices.every((price) => price !== undefined) && {
      cost: Math.round(prices.reduce<number>((sum, price) => sum + (price ?? 0), 0) * 1e6) / 1e6,
    }),
    areaM2: rounded(area),
    wasteAreaM2: rounded(all - area),
    cuts: boards.reduce((sum, board) => sum + board.cuts.length, 0),
  };
}

const rounded = (squareMetres: number): number => Math.round(squareMetres * 1e6) / 1e6;

export const pieceAreaM2 = (piece: Pick<Piece, 'outline' | 'holes'>): number =>
  areaM2(piece.outline) - (piece.holes ?? []).reduce((sum, hole) => sum + areaM2(hole), 0);
