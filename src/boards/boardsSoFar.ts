import type { BoardStock } from '../survey/boardStock.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Board, BoardLayout, Piece } from './boardLayout.js';
import { cutApart } from './cutApart.js';
import type { Place } from './cutsOfBoard.js';
import { cutBoard, describeCut } from './lockedBoards.js';
import { onBoard } from './onBoard.js';
import type { Stock } from './stocksOf.js';

/** What has become of a layout so far: ids of its pieces and boards. */
export interface SoFar {
  readonly before: Pick<BoardLayout, 'pieces' | 'boards' | 'rows'>;
  readonly up: ReadonlySet<string>;
  /** Cut, and lying there. */
  readonly cut: ReadonlySet<string>;
  /** Pieces that broke, and boards of which nothing is left to use. */
  readonly broken: ReadonlySet<string>;
  readonly lost: ReadonlySet<string>;
}

/** A part of a board that is there and may be cut. */
export interface Rest {
  readonly board: Board;
  readonly place: Place;
  /** As stock, under an id of its own. */
  readonly stock: BoardStock;
}

/** Whether a piece has been cut out of its board, whatever became of it. */
export const isCutOut = ({ up, cut, broken }: SoFar, { id }: Piece): boolean => up.has(id) || cut.has(id) || broken.has(id);

/** Boards that have been cut into, or are lost. */
export function openedBoards(soFar: SoFar): Set<string> {
  const { before, lost } = soFar;
  return new Set([...lost, ...before.pieces.filter((piece) => isCutOut(soFar, piece)).map(({ board }) => board)]);
}

/**
 * What is left to use of boards that have been cut into, or of which pieces are spoken for: as large as the cuts that those
 * pieces take leave it. A piece that lies there cut and is not wanted where it was meant to go is left by itself.
 *
 * @param spokenFor - ids of pieces that keep their place on their board
 */
export function restsOf(
  soFar: SoFar,
  stocks: readonly Stock[],
  spokenFor: ReadonlySet<string>,
  least: { readonly length: number; readonly width: number },
): Rest[] {
  const { before, up, cut, broken, lost } = soFar;
  return before.boards.flatMap((board) => {
    const stock = stocks.find((each) => each.board.id === board.stock);
    if (stock === undefined || lost.has(board.id)) return [];
    const own = before.pieces.filter((piece) => piece.board === board.id);
    const isOut = ({ id }: Piece): boolean => up.has(id) || cut.has(id) || broken.has(id) || spokenFor.has(id);
    if (!own.some(isOut)) return [];
    const whole = { along: 0, across: 0, length: stock.length, width: stock.width };
    const apart = cutApart(
      whole,
      own.map((piece) => ({ ...placeOf(piece), isOut: isOut(piece) })),
      stock.kerf,
    );
    const lying = own.filter(({ id }) => cut.has(id) && !spokenFor.has(id)).map(placeOf);
    return [...(apart?.left ?? []), ...lying]
      .filter(({ length, width }) => length >= least.length && width >= least.width)
      .map((place, i): Rest => ({ board, place, stock: asStock(stock.board, `${board.id} rest ${i + 1}`, place) }));
  });
}

const asStock = ({ price, available: _, ...stock }: BoardStock, id: string, { length, width }: Place): BoardStock => ({
  ...stock,
  id,
  length: fromGrid(length),
  width: fromGrid(width),
  ...(price !== undefined && { price }),
  atHand: true,
});

/** Where a piece lies on its board. */
export function placeOf({ at, cutLength, width }: Piece): Place {
  return { along: toGrid(at.along), across: toGrid(at.across), length: toGrid(cutLength), width: toGrid(width) };
}

/** Puts pieces that were cut from rests back on the boards that these are of, and says of each board how it is cut in all. */
export function onTheirBoards(
  { pieces, boards }: Pick<BoardLayout, 'pieces' | 'boards'>,
  rests: readonly Rest[],
  stocks: readonly Stock[],
  opened: ReadonlySet<string>,
): Pick<BoardLayout, 'pieces' | 'boards'> {
  const stockOf = (id: string): Stock => stocks.find(({ board }) => board.id === id) as Stock;
  const restOf = new Map(boards.map(({ id, stock }) => [id, rests.find((rest) => rest.stock.id === stock)]));
  const moved = pieces.map((piece) => {
    const rest = restOf.get(piece.board);
    if (rest === undefined) return piece;
    const { along, across, length, width } = placeOf(piece);
    const place = { along: along + rest.place.along, across: across + rest.place.across, length, width };
    return onBoard(piece, rest.board.id, stockOf(rest.board.stock), place);
  });
  const touched = new Set(rests.map(({ board }) => board.id));
  const known = new Map<string, Board>();
  for (const board of boards) {
    const own = restOf.get(board.id)?.board ?? board;
    if (!known.has(own.id)) known.set(own.id, { id: own.id, stock: own.stock, cuts: board.cuts, offcuts: board.offcuts });
  }
  return {
    pieces: moved,
    boards: [...known.values()].map((board) => {
      const stock = stockOf(board.stock);
      const places = moved.filter((piece) => piece.board === board.id).map(placeOf);
      const cut = touched.has(board.id) ? cutBoard(stock, places) : undefined;
      return { ...board, ...(cut && describeCut(board.id, cut)), ...(opened.has(board.id) && { opened: true as const }) };
    }),
  };
}
