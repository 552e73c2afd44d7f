import { heaviestCut } from './heaviestCut.js';
import type { RowSpace } from './rowSpace.js';
import type { UsualPrices } from './usualPrices.js';

/** Whether no way to cut a board is worth more than the board, and all numbers are whole and not below nothing. */
export function arePrices({ kinds, problem }: RowSpace, prices: UsualPrices): boolean {
  const isWhole = (value: number): boolean => Number.isSafeInteger(value) && value >= 0;
  if (prices.kinds.length !== kinds.length || prices.boards.length !== problem.stocks.length) return false;
  if (!prices.kinds.every(isWhole) || !prices.boards.every(isWhole)) return false;
  return problem.stocks.every(({ length, width, kerf }, stock) => {
    const worth = {
      widths: kinds.map((kind) => kind.width),
      alone: kinds.map((kind) => kind.alone[stock]),
      sizes: kinds.map((kind) => kind.sizes[stock]),
      values: prices.kinds,
    };
    return heaviestCut({ length: length + kerf, width, kerf }, worth).most <= prices.boards[stock];
  });
}
