import type { BoardStock } from '../survey/boardStock.js';
import type { BoardToCheck } from './layoutToCheck.js';

/** A board and its stock. */
export interface KnownBoard {
  readonly board: BoardToCheck;
  readonly stock: BoardStock;
}

/** Boards of known stocks that are to be bought: not what is at hand, nor what was cut up before the layout. */
export function boughtBoards(boards: readonly BoardToCheck[], stocks: readonly BoardStock[]): KnownBoard[] {
  const stockOf = new Map(stocks.map((stock) => [stock.id, stock]));
  return boards.flatMap((board) => {
    const stock = stockOf.get(board.stock);
    return stock === undefined || stock.atHand === true || board.opened === true ? [] : [{ board, stock }];
  });
}
