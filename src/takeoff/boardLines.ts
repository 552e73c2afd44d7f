import type { BoardLayout } from '../boards/boardLayout.js';
import type { BoardStock } from '../survey/boardStock.js';
import { packsOf, rounded } from './packs.js';
import type { TakeOffLine } from './takeOffResult.js';

/** Boards of one size to buy, and why so many. */
export interface OrderedBoards {
  readonly stock: BoardStock;
  readonly laid: number;
  readonly toBuy: number;
  readonly basis: string;
}

type CountedLayout = Pick<BoardLayout, 'boardsBought' | 'boardsAtMinimumLength' | 'boardsByStock'> & {
  readonly boards: readonly Pick<BoardLayout['boards'][number], 'opened'>[];
};

/**
 * The boards of a layout by size. What more it takes when every board comes as short as it may is put on the largest size laid,
 * which can give any piece.
 */
export function orderedBoards(layout: CountedLayout, boards: readonly BoardStock[], breakage: number): OrderedBoards[] {
  const laid = layout.boardsByStock
    .filter(({ count }) => count > 0)
    .map(({ stock, count }) => ({ stock: stockOf(stock, boards), count }));
  const isBegun = layout.boards.some(({ opened }) => opened === true);
  const more = Math.max(0, (layout.boardsAtMinimumLength ?? layout.boardsBought) - layout.boardsBought);
  const largest = laid.reduce<BoardStock | undefined>(
    (best, { stock }) => (best === undefined || stock.length * stock.width > best.length * best.width ? stock : best),
    undefined,
  );
  return laid.map(({ stock, count }) => {
    const extra = stock === largest ? more : 0;
    const toBuy = packsOf((count + extra) * (1 + breakage), 1);
    const reasons = [
      isBegun ? `${count} not cut into yet` : `${count} as laid`,
      ...(extra > 0 ? [`${extra} more when every board comes as short as it may`] : []),
      ...(layout.boardsAtMinimumLength === null ? ['full-length boards needed: measure them on delivery'] : []),
      ...(breakage > 0 ? [`${rounded(breakage * 100, 1)} % for breakage`] : []),
    ];
    return { stock, laid: count, toBuy, basis: reasons.join('; ') };
  });
}

function stockOf(id: string, boards: readonly BoardStock[]): BoardStock {
  const stock = boards.find((each) => each.id === id);
  if (stock === undefined) throw new Error(`no board ${id} in the job`);
  return stock;
}

export const boardLines = (ordered: readonly OrderedBoards[]): TakeOffLine[] =>
  ordered.map(({ stock, toBuy, basis }) => ({
    item: `board ${stock.length} x ${stock.width} x ${stock.thickness} (${stock.id})`,
    quantity: toBuy,
    unit: 'boards',
    packs: toBuy,
    perPack: 1,
    basis,
  }));
