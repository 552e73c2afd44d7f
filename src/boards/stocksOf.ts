import type { RuleSet } from '../rules/ruleSet.js';
import { numberOf } from '../rules/ruleValue.js';
import { boardTolerances } from '../rules/standards/en520of2009.js';
import type { BoardStock } from '../survey/boardStock.js';
import { toGrid } from '../survey/grid.js';

/** A board that can be bought, in grid steps. */
export interface Stock {
  readonly board: BoardStock;
  readonly length: number;
  readonly width: number;
  readonly kerf: number;
  /** How much shorter it may come. */
  readonly lengthTolerance: number;
  /** Length times width, in square mm, so that it stays a whole number of a sensible size. */
  readonly area: number;
}

/** The boards on offer, the longest and widest first. */
export function stocksOf(boards: readonly BoardStock[], set: RuleSet): Stock[] {
  return boards
    .map((board) => ({
      board,
      length: toGrid(board.length),
      width: toGrid(board.width),
      kerf: toGrid(board.kerf ?? numberOf(set, 'kerf')),
      lengthTolerance: toGrid(board.lengthTolerance ?? boardTolerances(board.thickness).shorter),
      area: Math.round(board.length * board.width),
    }))
    .sort((a, b) => b.length - a.length || b.width - a.width || (a.board.id < b.board.id ? -1 : 1));
}
