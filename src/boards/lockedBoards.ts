import { fromGrid, toGrid } from '../survey/grid.js';
import { problem as inputProblem, refuse } from '../survey/inputError.js';
import type { Board, Offcut } from './boardLayout.js';
import type { Box } from './box.js';
import { type CutApart, cutApart, type Marked } from './cutApart.js';
import type { Place } from './cutsOfBoard.js';
import type { LockedPiece } from './lockedPieces.js';
import type { PlacementProblem } from './placementProblem.js';
import type { Stock } from './stocksOf.js';

/** The boards that pieces which are up were cut from. */
export interface LockedBoards {
  readonly boards: readonly Board[];
  /** Per piece that is up: its board, and its place on it. */
  readonly of: readonly { readonly board: string; readonly stock: Stock; readonly place: Place }[];
}

/**
 * @throws InputError when a board's stock is unknown, or the board cannot give its pieces
 */
export function lockedBoards({ request, stocks, parts }: PlacementProblem): LockedBoards {
  const locked = request.locked ?? [];
  const ids = boardIds(locked);
  const up = parts.flatMap(({ standing }) => standing.up);
  const sizes = locked.map((_, index) => {
    const { near, far, low, high } = up.find((piece) => piece.index === index) as Box;
    return { length: far - near, width: high - low };
  });
  const of: { board: string; stock: Stock; place: Place }[] = [];
  const boards = [...new Set(ids)].map((id): Board => {
    const own = locked.flatMap((piece, index) => (ids[index] === id ? [{ piece, index, ...sizes[index] }] : []));
    const path = `locked[${own[0].index}].board`;
    const stock = stockFor(stocks, own, path);
    const places = placesOf(own, stock) ?? refuse(overcut(path, id));
    own.forEach(({ index }, k) => {
      of[index] = { board: id, stock, place: places[k] };
    });
    const cut = cutBoard(stock, places) ?? refuse(overcut(path, id));
    return { id, stock: stock.board.id, ...describeCut(id, cut), opened: true };
  });
  return { boards, of };
}

const overcut = (path: string, id: string) => inputProblem('board-overcut', path, 'a board that gives all its pieces', id);

/** How a board is cut into these pieces, and what is left. */
export const cutBoard = ({ length, width, kerf }: Stock, places: readonly Place[]): CutApart | undefined =>
  cutApart(
    { along: 0, across: 0, length, width },
    places.map((place): Marked => ({ ...place, isOut: true })),
    kerf,
  );

/** Cuts and rests of a board as a layout has them, mm. */
export const describeCut = (board: string, { cuts, left }: CutApart): Pick<Board, 'cuts' | 'offcuts'> => ({
  cuts: cuts.map(({ kind, at, from, to }) => ({ kind, at: fromGrid(at), from: fromGrid(from), to: fromGrid(to) })),
  offcuts: left.map(
    ({ along, across, length, width }): Offcut => ({
      board,
      length: fromGrid(length),
      width: fromGrid(width),
      at: { along: fromGrid(along), across: fromGrid(across) },
    }),
  ),
});

/** As given; pieces without a board get one of their own: U1, U2 … */
function boardIds(locked: readonly LockedPiece[]): string[] {
  const taken = new Set(locked.map(({ board }) => board));
  let count = 0;
  return locked.map(({ board }) => {
    if (board !== undefined) return board;
    do count++;
    while (taken.has(`U${count}`));
    return `U${count}`;
  });
}

interface OwnPiece {
  readonly piece: LockedPiece;
  readonly index: number;
  readonly length: number;
  readonly width: number;
}

function stockFor(stocks: readonly Stock[], own: readonly OwnPiece[], path: string): Stock {
  const named = own.find(({ piece }) => piece.stock !== undefined);
  const bySize = (stock: Stock): boolean => own.every(({ length, width }) => length <= stock.length && width <= stock.width);
  const [smallest] = stocks
    .filter((stock) =>
      named === undefined ? bySize(stock) && placesOf(own, stock) !== undefined : stock.board.id === named.piece.stock,
    )
    .sort((a, b) => a.area - b.area);
  if (smallest !== undefined) return smallest;
  const [expected, received] =
    named === undefined
      ? ['a piece that one of the boards can give', 'a larger one']
      : ['the id of a board', named.piece.stock ?? ''];
  return refuse(
    inputProblem(
      named === undefined ? 'board-overcut' : 'board-unknown',
      named === undefined ? path : `locked[${named.index}].stock`,
      expected,
      received,
    ),
  );
}

/** Where pieces lie on their board: as given, or one after another, in lanes side by side where the length runs out. */
function placesOf(own: readonly OwnPiece[], { length, width, kerf }: Stock): Place[] | undefined {
  if (own.every(({ piece }) => piece.at !== undefined)) {
    return own.map(({ piece: { at }, ...size }) => ({
      along: toGrid(at?.along ?? 0),
      across: toGrid(at?.across ?? 0),
      length: size.length,
      width: size.width,
    }));
  }
  let [along, across, lane] = [0, 0, 0];
  const places: Place[] = [];
  for (const each of own) {
    if (along > 0 && along + each.length > length) [along, across, lane] = [0, across + lane + kerf, 0];
    if (along + each.length > length || across + each.width > width) return undefined;
    places.push({ along, across, length: each.length, width: each.width });
    along += each.length + kerf;
    lane = Math.max(lane, each.width);
  }
  return places;
}
