import { fromGrid } from '../survey/grid.js';
import type { End, Piece } from './boardLayout.js';
import { type Described, describeEnd, jointLength } from './describeLayout.js';
import type { Laid } from './laid.js';
import { buttAt, type LaidEnd, type LaidPiece, laidPieces } from './laidPieces.js';
import { layoutCounts, pieceAreaM2 } from './layoutCounts.js';
import { lockedBoards } from './lockedBoards.js';
import { onBoard } from './onBoard.js';
import { named, placeKey } from './pieceNames.js';
import type { PlacementProblem } from './placementProblem.js';
import { renamedBoards } from './renamedBoards.js';
import { standingIn } from './standingJoints.js';

/** Puts the pieces that are up among those that were laid, and gives pieces the names that they had before. */
export function withLocked(problem: PlacementProblem, laid: Laid, described: Described): Described {
  const { locked = [], kept = [], boardIds = [] } = problem.request;
  if (locked.length + kept.length + boardIds.length === 0) return described;
  const laidAround = laidPieces(problem, laid);
  const up = lockedAmong(problem, laid, laidAround);
  const before = lockedBoards(problem);
  const renamed = clearOfNames(described, new Set([...boardIds, ...before.boards.map(({ id }) => id)]));
  const boards = [...before.boards, ...renamed.boards];
  const all = [...renamed.pieces, ...up.map(({ index, as }) => describeLocked(problem, as, index, before.of[index]))];
  const known = new Map([
    ...kept.map((piece) => [placeKey(piece), piece.id] as const),
    ...locked.flatMap((piece) => (piece.id === undefined ? [] : [[placeKey(piece), piece.id] as const])),
  ]);
  const pieces = named(
    [...all].sort((a, b) => a.row - b.row || a.ends[0].position - b.ends[0].position),
    known,
  );
  return {
    pieces,
    boards,
    ...layoutCounts(
      problem.stocks.map(({ board }) => board),
      pieces,
      boards,
    ),
    rows: described.rows,
    jointLength: jointLength(laid, [...laidAround, ...up.map(({ as }) => as)]),
  };
}

interface Locked {
  /** Among the locked pieces of the request. */
  readonly index: number;
  readonly as: LaidPiece;
}

/** The pieces that are up, as if they had been laid. */
function lockedAmong(problem: PlacementProblem, { rows }: Laid, laid: readonly LaidPiece[]): Locked[] {
  return rows.flatMap(({ band, runs }, row) =>
    runs.flatMap(({ places, lowMeets, highMeets }) => {
      const run = { from: places[0], to: places[places.length - 1] };
      const { joints, pieces } = standingIn(problem, band, run);
      return pieces.map(({ index, from, to }): Locked => {
        const box = problem.standing.up[index];
        const meeting = (at: number): LaidEnd => {
          const joint = joints.find((each) => each.at === at);
          const beside = laid
            .flatMap((piece) => (piece.row === row ? piece.ends : []))
            .find((end) => end.meets === 'board' && end.position === at);
          return beside ?? buttAt(problem, band, at, joint?.joist ?? -1, [joint?.below ?? 0, joint?.above ?? 0]);
        };
        const low = from === run.from ? atWall(lowMeets, box.near) : meeting(from);
        const high = to === run.to ? atWall(highMeets, box.far) : meeting(to);
        const width = box.high - box.low;
        const nominal = high.position - low.position;
        return { index, as: { index: -1, row, rows: rows.length, place: 0, count: 0, nominal, width, box, ends: [low, high] } };
      });
    }),
  );
}

const atWall = (meets: LaidEnd['meets'], position: number): LaidEnd => ({ meets, position, offset: 0, gap: 0 });

function describeLocked(
  problem: PlacementProblem,
  as: LaidPiece,
  index: number,
  { board, stock, place }: ReturnType<typeof lockedBoards>['of'][number],
): Piece {
  const { outline, holes } = (problem.request.locked ?? [])[index];
  const ends = as.ends.map((end) => describeEnd(problem, end, false));
  const piece: Piece = {
    id: '',
    row: problem.mirrored.v ? as.rows - as.row : as.row + 1,
    outline,
    ...(holes && { holes }),
    length: fromGrid(as.nominal),
    cutLength: fromGrid(place.length),
    width: fromGrid(as.width),
    board,
    at: { along: 0, across: 0 },
    ends: (problem.mirrored.u ? ends.reverse() : ends) as unknown as [End, End],
    edges: { low: 'cut', high: 'cut' },
    tight: false,
    massKg: Math.round(pieceAreaM2({ outline, ...(holes && { holes }) }) * stock.board.massPerArea * 1000) / 1000,
    locked: true,
  };
  return onBoard(piece, board, stock, place);
}

/** New boards take numbers that no board before them has. */
function clearOfNames({ pieces, boards }: Described, taken: ReadonlySet<string>): Pick<Described, 'pieces' | 'boards'> {
  let count = 0;
  const names = new Map(
    boards.map(({ id }) => {
      do count++;
      while (taken.has(`B${count}`));
      return [id, `B${count}`];
    }),
  );
  return renamedBoards({ pieces, boards }, names);
}
