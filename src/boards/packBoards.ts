import type { PlacementProblem, Stock } from './placementProblem.js';
import { fitsLength, type PossiblePiece } from './possiblePieces.js';

/** A piece to be cut: its length, and the width of its row. */
export interface WantedPiece {
  readonly piece: PossiblePiece;
  readonly width: number;
  /** Index of its row, from the low side. */
  readonly row: number;
  /** Whether its ends are butt joints. */
  readonly lowJoint: boolean;
  readonly highJoint: boolean;
}

/**
 * How one board is used: pieces of its whole width one after another from its low end, the rest of its length in strips side by
 * side. Pieces are indices into what was wanted.
 */
export interface PackedBoard {
  readonly stock: Stock;
  readonly whole: readonly number[];
  readonly strips: readonly { readonly width: number; readonly pieces: readonly number[] }[];
}

interface OpenStrip {
  readonly width: number;
  readonly pieces: number[];
  used: number;
}

interface OpenBoard {
  readonly stock: Stock;
  readonly whole: number[];
  readonly strips: OpenStrip[];
  used: number;
  /** Width taken by strips, each with its cut. */
  across: number;
}

/** How long a piece comes out of a board of this stock. */
export const sizeFrom = (stock: Stock, piece: PossiblePiece): number => Math.min(piece.cut, stock.length);

export function canGive(problem: PlacementProblem, stock: Stock, { piece, width }: WantedPiece): boolean {
  return width <= stock.width && fitsLength(problem, stock.length, piece);
}

/**
 * Cuts the pieces from as few boards as it can, trying at most `steps` placings; nothing when it finds no way within `most`
 * boards. The wide and long pieces go first, each tried where it leaves least.
 */
export function packBoards(
  problem: PlacementProblem,
  wanted: readonly WantedPiece[],
  most: number,
  steps: number,
): PackedBoard[] | undefined {
  const order = wanted
    .map((_, index) => index)
    .sort((a, b) => wanted[b].width - wanted[a].width || wanted[b].piece.cut - wanted[a].piece.cut || a - b);
  const boards: OpenBoard[] = [];
  const left = problem.stocks.map((stock) => stock.board.available ?? Infinity);
  let spent = 0;
  const place = (at: number): boolean => {
    if (at === order.length) return true;
    if (spent++ > steps) return false;
    const index = order[at];
    for (const undo of placings(problem, wanted, index, boards, left, most)) {
      if (place(at + 1)) return true;
      undo();
    }
    return false;
  };
  if (!place(0)) return undefined;
  return boards.map(({ stock, whole, strips }) => smallest(problem, wanted, { stock, whole, strips }, left));
}

/** One way to place a piece, and how much length it leaves. */
interface Choice {
  readonly rest: number;
  readonly key: string;
  readonly apply: () => () => void;
}

/** Every different way to place one piece now, best fit first; each is done when it is drawn and must be undone after. */
function* placings(
  problem: PlacementProblem,
  wanted: readonly WantedPiece[],
  index: number,
  boards: OpenBoard[],
  left: number[],
  most: number,
): Generator<() => void> {
  const choices = boards
    .filter(({ stock }) => canGive(problem, stock, wanted[index]))
    .flatMap((board) => choicesOn(board, index, wanted[index]))
    .sort((a, b) => a.rest - b.rest || (a.key < b.key ? -1 : 1));
  let before = '';
  for (const choice of choices) {
    if (choice.key === before) continue;
    before = choice.key;
    yield choice.apply();
  }
  if (boards.length >= most) return;
  for (const [at, stock] of problem.stocks.entries()) {
    if (left[at] > 0 && canGive(problem, stock, wanted[index])) yield putOnNew(boards, stock, index, wanted[index], left, at);
  }
}

function choicesOn(board: OpenBoard, index: number, { piece, width }: WantedPiece): Choice[] {
  const { stock, strips } = board;
  const size = sizeFrom(stock, piece) + stock.kerf;
  const room = stock.length + stock.kerf - board.used - size;
  const key = `${stock.board.id} ${board.used} ${strips.map((strip) => `${strip.width}:${strip.used}`).join(' ')}`;
  if (width === stock.width) {
    const rest = room - Math.max(0, ...strips.map((strip) => strip.used));
    return rest < 0 ? [] : [{ rest, key, apply: () => putWhole(board, index, size) }];
  }
  const choices = strips
    .filter((strip) => strip.width === width && strip.used <= room)
    .map((strip) => ({ rest: room - strip.used, key: `${key} in ${strip.used}`, apply: () => putIn(strip, index, size) }));
  if (room >= 0 && board.across + width <= stock.width) {
    choices.push({ rest: room, key: `${key} beside`, apply: () => putBeside(board, index, width, size) });
  }
  return choices;
}

function putWhole(board: OpenBoard, index: number, size: number): () => void {
  board.whole.push(index);
  board.used += size;
  return () => {
    board.whole.pop();
    board.used -= size;
  };
}

function putIn(strip: OpenStrip, index: number, size: number): () => void {
  strip.pieces.push(index);
  strip.used += size;
  return () => {
    strip.pieces.pop();
    strip.used -= size;
  };
}

function putBeside(board: OpenBoard, index: number, width: number, size: number): () => void {
  board.strips.push({ width, pieces: [index], used: size });
  board.across += width + board.stock.kerf;
  return () => {
    board.strips.pop();
    board.across -= width + board.stock.kerf;
  };
}

function putOnNew(
  boards: OpenBoard[],
  stock: Stock,
  index: number,
  { piece, width }: WantedPiece,
  left: number[],
  at: number,
): () => void {
  const board: OpenBoard = { stock, whole: [], strips: [], used: 0, across: 0 };
  const size = sizeFrom(stock, piece) + stock.kerf;
  if (width === stock.width) putWhole(board, index, size);
  else putBeside(board, index, width, size);
  boards.push(board);
  left[at]--;
  return () => {
    boards.pop();
    left[at]++;
  };
}

/** The same pieces from the smallest stock that gives them in the same way. */
function smallest(problem: PlacementProblem, wanted: readonly WantedPiece[], board: PackedBoard, left: number[]): PackedBoard {
  let best = board;
  for (const [at, stock] of problem.stocks.entries()) {
    if (stock.area >= best.stock.area || left[at] <= 0) continue;
    const moved = { ...board, stock };
    if (holds(problem, wanted, moved)) best = moved;
  }
  if (best !== board) {
    left[problem.stocks.indexOf(board.stock)]++;
    left[problem.stocks.indexOf(best.stock)]--;
  }
  return best;
}

function holds(problem: PlacementProblem, wanted: readonly WantedPiece[], { stock, whole, strips }: PackedBoard): boolean {
  const every = [...whole, ...strips.flatMap(({ pieces }) => pieces)];
  if (!every.every((index) => canGive(problem, stock, wanted[index]))) return false;
  const run = (pieces: readonly number[]): number =>
    pieces.reduce((sum, index) => sum + sizeFrom(stock, wanted[index].piece) + stock.kerf, 0);
  const rest = stock.length + stock.kerf - run(whole);
  const across = strips.reduce((sum, { width }) => sum + width + stock.kerf, 0);
  return (
    whole.every((index) => wanted[index].width === stock.width) &&
    rest >= 0 &&
    strips.every(({ width, pieces }) => width < stock.width && run(pieces) <= rest) &&
    across <= stock.width + stock.kerf
  );
}
