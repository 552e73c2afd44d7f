import type { BoardStock } from 'soffitwright';
import type { FilledBoard } from './placementCutting.js';
import type { OracleAnswer } from './placementOracle.js';
import type { ModelPiece, ModelRow, RoomToSolve } from './placementRows.js';

/** A layout as the check of layouts takes it. */
export interface Witness {
  readonly pieces: readonly {
    readonly id: string;
    readonly outline: readonly { x: number; y: number }[];
    readonly board: string;
  }[];
  readonly boards: readonly { readonly id: string; readonly stock: string }[];
}

/** The layout that a solution describes, so that others can check that it keeps the rules; its strips must be as cut. */
export function placementWitness(
  { room, joists, boards }: RoomToSolve,
  rowWidths: readonly number[],
  { model: { rows, cutting }, count }: NonNullable<OracleAnswer['solution']>,
): Witness {
  const filled = cutting.filled(count).map((board) => ({ ...board, left: [...board.items] }));
  const across = room.outline.map(({ x, y }) => thousandths(joists.direction === 'y' ? y : x));
  const depth = Math.max(...across) - Math.min(...across);
  const used = rowWidths.reduce((sum, width) => sum + thousandths(width), 0);
  let low = Math.min(...across) + (depth - used) / 2;
  const pieces: Witness['pieces'][number][] = [];
  rows.forEach(({ places, pieces: possible }, row) => {
    const high = low + thousandths(rowWidths[row]);
    for (const piece of possible.filter((_, index) => count(`x${row}_${index}`) === 1)) {
      const on = filled.findIndex(({ left }) => left.some((item) => item.width === rowWidths[row] && item.size === piece.size));
      const at = filled[on].left.findIndex((item) => item.width === rowWidths[row] && item.size === piece.size);
      filled[on].left.splice(at, 1);
      const [from, to] = asCut(places, piece, boards[filled[on].stock]);
      const corners = [
        [from, low],
        [to, low],
        [to, high],
        [from, high],
      ].map(([u, v]) => (joists.direction === 'y' ? { x: u / 1000, y: v / 1000 } : { x: v / 1000, y: u / 1000 }));
      pieces.push({ id: `${row + 1}.${pieces.length + 1}`, outline: corners, board: `board ${on + 1}` });
    }
    low = high;
  });
  return { pieces, boards: filled.map((board: FilledBoard, at) => ({ id: `board ${at + 1}`, stock: boards[board.stock].id })) };
}

const thousandths = (length: number): number => Math.round(length * 1000);

/** Where a piece begins and ends: with the gaps as they should be, or wider where its board is a little short. */
function asCut(places: ModelRow['places'], { from, to }: ModelPiece, board: BoardStock): [number, number] {
  const [first, last] = [places[from], places[to]];
  const ends: [number, number] = [first.at + first.back, last.at - last.back];
  let short = ends[1] - ends[0] - thousandths(board.length);
  if (short <= 0) return ends;
  const low = Math.min(first.give, short);
  short -= low;
  return [ends[0] + low, ends[1] - short];
}
