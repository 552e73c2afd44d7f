import type { GridCut, Place } from './cutsOfBoard.js';

/** A rectangle on a board, in grid steps; `isOut`: it is to be cut out. */
export interface Marked extends Place {
  readonly isOut: boolean;
}

/** How a board is cut so that the rectangles on it that are to come out do, and what is left of it. */
export interface CutApart {
  readonly cuts: readonly GridCut[];
  readonly left: readonly Place[];
}

/**
 * Cuts a board from side to side, again and again, until every rectangle that is to come out is by itself; what has none of
 * them is left as it is. Pieces as wide as what they lie in are cut off first, then strips are ripped. Nothing when no cut from
 * side to side parts them.
 */
export function cutApart(board: Place, marked: readonly Marked[], kerf: number): CutApart | undefined {
  if (!marked.some(({ isOut }) => isOut)) return { cuts: [], left: [board] };
  if (marked.length === 1 && trimmed(board, marked[0]).every((side) => side === 0)) return { cuts: [], left: [] };
  const spanning = marked.some(({ width }) => width === board.width);
  const cut = spanning
    ? (crossCut(board, marked, kerf) ?? rip(board, marked, kerf))
    : (rip(board, marked, kerf) ?? crossCut(board, marked, kerf));
  if (cut === undefined) return undefined;
  const parts = halves(board, cut, kerf).map((half) =>
    cutApart(
      half,
      marked.filter((each) => isWithin(each, half)),
      kerf,
    ),
  );
  if (parts.some((part) => part === undefined)) return undefined;
  const known = parts as readonly CutApart[];
  return { cuts: [cut, ...known.flatMap(({ cuts }) => cuts)], left: known.flatMap(({ left }) => left) };
}

/** What a rectangle leaves of its board at the low end, the high end, the low edge and the high edge. */
const trimmed = (board: Place, each: Place): number[] => [
  each.along - board.along,
  board.along + board.length - each.along - each.length,
  each.across - board.across,
  board.across + board.width - each.across - each.width,
];

const isWithin = (each: Place, half: Place): boolean => trimmed(half, each).every((side) => side >= 0);

/** The first place where a saw passes all across between the rectangles. */
function crossCut(board: Place, marked: readonly Marked[], kerf: number): GridCut | undefined {
  const at = passing(
    marked.map(({ along, length }) => [along, along + length] as const),
    board.along,
    board.along + board.length,
    kerf,
  );
  return at === undefined ? undefined : { kind: 'cross', at, from: board.across, to: board.across + board.width };
}

function rip(board: Place, marked: readonly Marked[], kerf: number): GridCut | undefined {
  const at = passing(
    marked.map(({ across, width }) => [across, across + width] as const),
    board.across,
    board.across + board.width,
    kerf,
  );
  return at === undefined ? undefined : { kind: 'rip', at, from: board.along, to: board.along + board.length };
}

/** Behind the end of some rectangle or, where the saw has room, before the first of them. */
function passing(spans: readonly (readonly [number, number])[], low: number, high: number, kerf: number): number | undefined {
  const places = [...spans.map(([, end]) => end), ...spans.map(([start]) => Math.max(low, start - kerf))].sort((a, b) => a - b);
  return places.find(
    (at) => at > low && at < high && spans.every(([start, end]) => end <= at || start >= Math.min(high, at + kerf)),
  );
}

function halves(board: Place, { kind, at }: GridCut, kerf: number): Place[] {
  const [low, size] = kind === 'cross' ? (['along', 'length'] as const) : (['across', 'width'] as const);
  const after = Math.min(board[low] + board[size], at + kerf);
  return [
    { ...board, [size]: at - board[low] },
    { ...board, [low]: after, [size]: board[low] + board[size] - after },
  ].filter((half) => half[size] > 0);
}
