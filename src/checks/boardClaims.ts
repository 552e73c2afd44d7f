import type { Finding } from '../rules/finding.js';
import { numberOf } from '../rules/ruleValue.js';
import type { BoardStock } from '../survey/boardStock.js';
import { toGrid } from '../survey/grid.js';
import type { PieceFacts, Work } from './ceiling.js';
import { wrong } from './claimWrong.js';
import type { BoardToCheck, CutClaim, LayoutToCheck, OffcutClaim } from './layoutToCheck.js';

/** Cuts and offcuts that do not go with the places of the pieces on their board. */
export function boardClaims(work: Work, boards: readonly BoardStock[]): Finding[] {
  const stockOf = new Map(boards.map((stock) => [stock.id, stock]));
  const { layout } = work.given;
  const ofBoards = layout.boards.flatMap((board) => {
    const stock = stockOf.get(board.stock);
    if (stock === undefined) return [];
    const pieces = work.about.filter(({ claim }) => claim.board === board.id);
    const kerf = toGrid(stock.kerf ?? numberOf(work.rules, 'kerf'));
    return [...cutClaims(board, stock, pieces, kerf), ...offcutClaims(board, stock, pieces)];
  });
  return [...ofBoards, ...listedOffcuts(layout)];
}

/** The offcuts of all boards together are those of each. */
function listedOffcuts({ boards, offcuts }: LayoutToCheck): Finding[] {
  if (offcuts === undefined || boards.some((board) => board.offcuts === undefined)) return [];
  const key = (board: string, { length, width, at }: OffcutClaim): string =>
    JSON.stringify([board, ...[length, width, at.along, at.across].map(toGrid)]);
  const left = new Set(boards.flatMap((board) => (board.offcuts ?? []).map((offcut) => key(board.id, offcut))));
  const listed = new Set(offcuts.map((offcut) => key(offcut.board, offcut)));
  const strange = offcuts
    .filter((offcut) => !left.has(key(offcut.board, offcut)))
    .map(({ board, length, width }) => wrong('offcuts', `${length} x ${width} of board ${board}`, 'not left of it', { board }));
  const forgotten = boards.flatMap((board) =>
    (board.offcuts ?? [])
      .filter((offcut) => !listed.has(key(board.id, offcut)))
      .map(({ length, width }) =>
        wrong('offcuts', `none of ${length} x ${width}`, `one of board ${board.id}`, { board: board.id }),
      ),
  );
  return [...strange, ...forgotten];
}

/** A rectangle on a board, grid steps. */
interface Area {
  readonly along: number;
  readonly across: number;
  readonly alongEnd: number;
  readonly acrossEnd: number;
}

const wholeBoard = ({ length, width }: BoardStock): Area => ({
  along: 0,
  across: 0,
  alongEnd: toGrid(length),
  acrossEnd: toGrid(width),
});

function areaOf({ claim: { at }, box }: PieceFacts): Area | undefined {
  if (at === undefined) return undefined;
  const [along, across] = [toGrid(at.along), toGrid(at.across)];
  return { along, across, alongEnd: along + box.u1 - box.u0, acrossEnd: across + box.v1 - box.v0 };
}

function cutClaims({ id, cuts }: BoardToCheck, stock: BoardStock, pieces: readonly PieceFacts[], kerf: number): Finding[] {
  if (cuts === undefined) return [];
  const whole = wholeBoard(stock);
  const lines = cuts.map(({ kind, at, from, to }) => ({ kind, at: toGrid(at), from: toGrid(from), to: toGrid(to) }));
  const where = { board: id };
  const off = lines
    .filter((cut) => !onBoard(cut, whole))
    .map(({ kind }) => wrong(`board ${id}, ${kind} cut`, 'on the board', 'off it', where));
  const through = pieces.flatMap((piece) => {
    const area = areaOf(piece);
    return area && lines.some((cut) => crosses(cut, area))
      ? [wrong(`board ${id}, cuts`, `clear of piece ${piece.id}`, 'through it', { piece: piece.id, board: id })]
      : [];
  });
  const missing = pieces.flatMap((piece) => {
    const area = areaOf(piece);
    return area && !sidesOf(area).every((side) => isEdge(side, whole) || lines.some((cut) => makes(cut, side, kerf)))
      ? [wrong(`board ${id}, cuts`, `all round piece ${piece.id}`, 'one is missing', { piece: piece.id, board: id })]
      : [];
  });
  return [...off, ...through, ...missing];
}

const onBoard = ({ kind, at, from, to }: CutClaim, { alongEnd, acrossEnd }: Area): boolean => {
  const [reach, span] = kind === 'cross' ? [alongEnd, acrossEnd] : [acrossEnd, alongEnd];
  return at > 0 && at < reach && from >= 0 && from < to && to <= span;
};

function crosses({ kind, at, from, to }: CutClaim, { along, across, alongEnd, acrossEnd }: Area): boolean {
  const [low, high, start, end] = kind === 'cross' ? [along, alongEnd, across, acrossEnd] : [across, acrossEnd, along, alongEnd];
  return low < at && at < high && from < end && to > start;
}

interface CutSide {
  readonly kind: CutClaim['kind'];
  readonly at: number;
  readonly from: number;
  readonly to: number;
  /** Which way the piece lies from this side. */
  readonly piece: 1 | -1;
}

const sidesOf = ({ along, across, alongEnd, acrossEnd }: Area): CutSide[] => [
  { kind: 'cross', at: along, from: across, to: acrossEnd, piece: 1 },
  { kind: 'cross', at: alongEnd, from: across, to: acrossEnd, piece: -1 },
  { kind: 'rip', at: across, from: along, to: alongEnd, piece: 1 },
  { kind: 'rip', at: acrossEnd, from: along, to: alongEnd, piece: -1 },
];

const isEdge = ({ kind, at }: CutSide, { alongEnd, acrossEnd }: Area): boolean =>
  at === 0 || at === (kind === 'cross' ? alongEnd : acrossEnd);

/** Whether a cut makes a side: along all of it, and no further off than the saw is wide. */
const makes = (cut: CutClaim, side: CutSide, kerf: number): boolean => {
  const off = (side.at - cut.at) * side.piece;
  return cut.kind === side.kind && off >= 0 && off <= kerf && cut.from <= side.from && cut.to >= side.to;
};

function offcutClaims({ id, offcuts = [] }: BoardToCheck, stock: BoardStock, pieces: readonly PieceFacts[]): Finding[] {
  const whole = wholeBoard(stock);
  const areas = offcuts.map(offcutArea);
  const others = pieces.flatMap((piece) => areaOf(piece) ?? []);
  const where = { board: id };
  return areas.flatMap((area, i) => {
    if (area.along < 0 || area.across < 0 || area.alongEnd > whole.alongEnd || area.acrossEnd > whole.acrossEnd) {
      return [wrong(`board ${id}, offcut ${i + 1}`, 'on the board', 'past its edge', where)];
    }
    return [...others, ...areas.slice(0, i)].some((other) => share(area, other))
      ? [wrong(`board ${id}, offcut ${i + 1}`, 'left over', 'used', where)]
      : [];
  });
}

function offcutArea({ length, width, at }: OffcutClaim): Area {
  const [along, across] = [toGrid(at.along), toGrid(at.across)];
  return { along, across, alongEnd: along + toGrid(length), acrossEnd: across + toGrid(width) };
}

const share = (a: Area, b: Area): boolean =>
  a.along < b.alongEnd && b.along < a.alongEnd && a.across < b.acrossEnd && b.across < a.acrossEnd;
