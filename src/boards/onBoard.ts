import { fromGrid, toGrid } from '../survey/grid.js';
import type { Piece } from './boardLayout.js';
import type { Place } from './cutsOfBoard.js';
import type { Stock } from './stocksOf.js';

/** A piece with what its place on a board makes of it: which edges are bound, which ends are the factory's, whether it is tight. */
export function onBoard(piece: Piece, board: string, stock: Stock, { along, across, length, width }: Place): Piece {
  const made = (isFactory: boolean) => (isFactory ? ('factory' as const) : ('cut' as const));
  const edge = (isBound: boolean) => (isBound ? ('bound' as const) : ('cut' as const));
  const [low, high] = piece.ends;
  return {
    ...piece,
    board,
    at: { along: fromGrid(along), across: fromGrid(across) },
    ends: [
      { ...low, made: made(along === 0) },
      { ...high, made: made(along + length === stock.length) },
    ],
    edges: { low: edge(across === 0), high: edge(across + width === stock.width) },
    tight: toGrid(piece.length) >= stock.length || length > stock.length - stock.lengthTolerance,
  };
}
