import { compareInOrder } from './compareInOrder.js';
import type { PlacementProblem } from './placementProblem.js';
import { fitsLength, type PossiblePiece, widthOn } from './possiblePieces.js';
import type { RowGraph } from './rowGraph.js';
import type { Stock } from './stocksOf.js';

/** Pieces that are cut alike: of the width of one row, and as long as each other from every board. */
export interface PieceKind {
  readonly width: number;
  /** Per stock: its length with one cut, in grid steps; Infinity where that board cannot give it. */
  readonly sizes: readonly number[];
  /** Per stock: whether nothing that is wanted goes beside it, so that it takes the whole width of its length. */
  readonly alone: readonly boolean[];
  /** Its length from the longest board, with the least cut. */
  readonly size: number;
}

/** The kinds of pieces that the rows of one layout may need, the widest and longest first. */
export interface PieceKinds {
  readonly kinds: readonly PieceKind[];
  /** Per row, per arc of its graph: the kind; -1 across an opening. */
  readonly ofRow: readonly Int32Array[];
}

/** How long a piece comes out of a board of this stock. */
export const sizeFrom = (stock: Stock, piece: PossiblePiece): number => Math.min(piece.cut, stock.length);

export const longestOf = ({ stocks }: PlacementProblem): Stock => stocks.reduce((a, b) => (b.length > a.length ? b : a));

export const leastKerf = ({ stocks }: PlacementProblem): number => Math.min(...stocks.map((stock) => stock.kerf));

/** Sorts the pieces of all rows into kinds. Rows of one graph and width share their list. */
export function pieceKinds(
  problem: PlacementProblem,
  rows: readonly { readonly graph: RowGraph; readonly width: number }[],
): PieceKinds {
  const found = new Map<string, PieceKind>();
  const narrowest = Math.min(...rows.flatMap(({ graph, width }) => graph.piece.map((piece) => widthOn(piece, width))));
  const lists: { graph: RowGraph; width: number; keys: string[] }[] = [];
  for (const { graph, width } of rows) {
    if (lists.some((list) => list.graph === graph && list.width === width)) continue;
    const keys = graph.piece.map((piece) => {
      if (piece === undefined) return '';
      const kind = kindOf(problem, piece, widthOn(piece, width), narrowest);
      const key = `${kind.width} ${kind.sizes.join(' ')}`;
      if (!found.has(key)) found.set(key, kind);
      return key;
    });
    lists.push({ graph, width, keys });
  }
  const order = [...found].sort(([, a], [, b]) => b.width - a.width || b.size - a.size || compareInOrder(b.sizes, a.sizes));
  const place = new Map(order.map(([key], index) => [key, index]));
  const arrays = lists.map((list) => ({ ...list, of: new Int32Array(list.keys.map((key) => place.get(key) ?? -1)) }));
  return {
    kinds: order.map(([, kind]) => kind),
    ofRow: rows.map(
      ({ graph, width }) => (arrays.find((list) => list.graph === graph && list.width === width) as { of: Int32Array }).of,
    ),
  };
}

/** The kind of one piece, `narrowest` being the least width of any piece that is wanted. */
export function kindOf(problem: PlacementProblem, piece: PossiblePiece, width: number, narrowest: number): PieceKind {
  const sizes = problem.stocks.map((stock) =>
    width <= stock.width && fitsLength(problem, stock.length, piece) ? sizeFrom(stock, piece) + stock.kerf : Infinity,
  );
  const alone = problem.stocks.map((stock) => width + stock.kerf + narrowest > stock.width);
  return { width, sizes, alone, size: sizeFrom(longestOf(problem), piece) + leastKerf(problem) };
}
