import type { BoardLayout } from './boardLayout.js';

/** Pieces and boards with other names for the boards; one that has no other keeps its own. */
export function renamedBoards(
  { pieces, boards }: Pick<BoardLayout, 'pieces' | 'boards'>,
  names: ReadonlyMap<string, string>,
): Pick<BoardLayout, 'pieces' | 'boards'> {
  const name = (id: string): string => names.get(id) ?? id;
  return {
    pieces: pieces.map((piece) => ({ ...piece, board: name(piece.board) })),
    boards: boards.map((board) => ({
      ...board,
      id: name(board.id),
      offcuts: board.offcuts.map((offcut) => ({ ...offcut, board: name(offcut.board) })),
    })),
  };
}
