import { fromGrid, toGrid } from '../survey/grid.js';
import type { End, Piece } from './boardLayout.js';
import type { Place } from './cutsOfBoard.js';
import type { Stock } from './stocksOf.js';

/**
 * A piece that was placed on a part of a board, told by its place on the whole of it: which edges are bound, which ends are the
 * factory's, whether it is tight. What is not the part's own is not the board's.
 */
export function onBoard(piece: Piece, board: string, stock: Stock, { along, across, length, width }: Place): Piece {
  const made = (isAtEnd: boolean, own: End['made']) => (isAtEnd ? own : 'cut');
  const edge = (isAtEdge: boolean, own: 'bound' | 'cut') => (isAtEdge ? own : 'cut');
  const [low, high] = piece.ends;
  return {
    ...piece,
    board,
    at: { along: fromGrid(along), across: fromGrid(across) },
    ends: [
      { ...low, made: made(along === 0, low.made) },
      { ...high, made: made(along + length === stock.length, high.made) },
    ],
    edges: {
      low: edge(across === 0, piece.edges.low),
      high: edge(across + width === stock.width, piece.edges.high),
    },
    tight: toGrid(piece.length) >= stock.length || length > stock.length - stock.lengthTolerance,
  };
}
