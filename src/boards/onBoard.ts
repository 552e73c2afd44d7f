import { fromGrid, toGrid } from '../survey/grid.js';
import type { Piece } from './boardLayout.js';
import type { Place } from './cutsOfBoard.js';
import type { Stock } from './stocksOf.js';

/** A piece with what its place on a board makes of it: which edges are bound, which ends are the factory's, whether it is tight. */
export function onBoard(piece: Piece, board: string, stock: Stock, { along, across, length, width }: Place): Piece {
  // Only what is whole of a board's end or edge is the board's own.
  const lengths = [piece.edgeLengths?.low ?? piece.cutLength, piece.edgeLengths?.high ?? piece.cutLength];
  const isWhole = lengths.every((each) => toGrid(each) === length);
  const made = (isFactory: boolean) => (isFactory && isWhole ? ('factory' as const) : ('cut' as const));
  const edge = (isBound: boolean, own: number) => (isBound && own > 0 ? ('bound' as const) : ('cut' as const));
  const [low, high] = piece.ends;
  return {
    ...piece,
    board,
    at: { along: fromGrid(along), across: fromGrid(across) },
    ends: [
      { ...low, made: made(along === 0) },
      { ...high, made: made(along + length === stock.length) },
    ],
    edges: { low: edge(across === 0, lengths[0]), high: edge(across + width === stock.width, lengths[1]) },
    tight: toGrid(piece.length) >= stock.length || length > stock.length - stock.lengthTolerance,
  };
}
