import { toGrid } from '../survey/grid.js';
import { twiceArea } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import { sidesOf } from '../survey/traceRings.js';
import type { Piece } from './boardLayout.js';
import type { Place } from './cutsOfBoard.js';
import { type Described, describeAll, describePiece, inPlanOrder, rowNumbers } from './describeLayout.js';
import { isRaked } from './jointLine.js';
import type { Laid } from './laid.js';
import { buttOn, type LaidEnd, type LaidPiece, laidPieces, type Span } from './laidPieces.js';
import { lockedBoards } from './lockedBoards.js';
import { onGrid } from './lockedPieces.js';
import { named, placeKey } from './pieceNames.js';
import type { PlacementProblem } from './placementProblem.js';
import { boxIn, type Edges, type PossiblePiece, type Run } from './possiblePieces.js';
import { renamedBoards } from './renamedBoards.js';
import type { Band } from './rowLayouts.js';
import type { UpPiece } from './standing.js';

/** Puts the pieces that are up among those that were laid, and gives pieces the names that they had before. */
export function withLocked(problem: PlacementProblem, laid: Laid, described: Described): Described {
  const { locked = [], kept = [], boardIds = [] } = problem.request;
  if (locked.length + kept.length + boardIds.length === 0) return described;
  const before = lockedBoards(problem);
  const renamed = clearOfNames(described, new Set([...boardIds, ...before.boards.map(({ id }) => id)]));
  const boards = [...before.boards, ...renamed.boards];
  const numbers = rowNumbers(problem, laid);
  const around = laidPieces(problem, laid);
  const up = lockedAmong(problem, laid, around);
  const order = inPlanOrder(problem, numbers, [...around, ...up.map(({ as }) => as)]);
  // The pieces that were laid are in the order of the plan already.
  const newly = inPlanOrder(problem, numbers, around);
  const pieceOf = new Map(newly.map((each, at) => [each, renamed.pieces[at]]));
  for (const { as, index } of up) {
    pieceOf.set(as, describeLocked(problem, as, numbers[as.row], index, before.of[index]));
  }
  const known = new Map([
    ...kept.map((piece) => [placeKey(piece), piece.id] as const),
    ...locked.flatMap((piece) => (piece.id === undefined ? [] : [[placeKey(piece), piece.id] as const])),
  ]);
  const pieces = named(
    order.map((each) => pieceOf.get(each) as Piece),
    known,
  );
  return describeAll(problem, order, { pieces, boards, rows: described.rows });
}

interface Locked {
  /** Among the locked pieces of the request. */
  readonly index: number;
  readonly as: LaidPiece;
}

/** The pieces that are up, as if they had been laid. */
function lockedAmong(problem: PlacementProblem, { rows }: Laid, laid: readonly LaidPiece[]): Locked[] {
  const all = rows.flatMap(({ band, runs }, row) =>
    runs.flatMap((run) =>
      run.pieces.flatMap((piece) => {
        if (piece.isUp !== true) return [];
        const box = boxIn(run, band, piece);
        const up = problem.parts[band.part].standing.up.find((each) => isSame(each, box)) as UpPiece;
        return [{ run, band, row, piece, up }];
      }),
    ),
  );
  const inPlace = [
    ...laid.map(({ row, box, ends }) => ({ row, box, meets: ends[0].meets, at: ends[0].position })),
    ...all.map(({ row, up, piece, run }) => ({ row, box: up, meets: piece.lowMeets, at: run.places[piece.from].at })),
  ];
  return all.map(({ run, band, row, piece, up }) => {
    const { part } = band;
    const { outline, holes = [] } = (problem.request.locked ?? [])[up.index];
    const into = (ring: typeof outline) => onGrid(ring).map(problem.parts[part].into);
    const shape = { outline: turnedLeft(into(outline)), holes: holes.map((ring) => turnedLeft(into(ring)).reverse()) };
    const own = laid.filter((each) => each.row === row);
    const low = endOf(problem, band, run, piece, up, 0, own, uprightAt(shape.outline, up.near, up));
    const high = endOf(problem, band, run, piece, up, 1, own, uprightAt(shape.outline, up.far, up));
    const facing = inPlace.filter(
      (other) =>
        other.row === row &&
        other.meets === 'board' &&
        other.at === high.position &&
        other.box.low < up.high &&
        up.low < other.box.high,
    );
    const raked = [run.places[piece.from], run.places[piece.to]].some(isRaked);
    const nominal =
      raked || up.far - up.near < high.position - low.position - toGrid(20) ? piece.nominal : high.position - low.position;
    const ends = [low, high.meets === 'board' ? { ...high, joints: facing.length } : high] as const;
    const { near, far, low: from, high: to } = up;
    return {
      index: up.index,
      as: { index: -1 - up.index, row, band, nominal, shape, box: { near, far, low: from, high: to }, ends },
    };
  });
}

const isSame = (
  a: UpPiece,
  b: { readonly near: number; readonly far: number; readonly low: number; readonly high: number },
): boolean =>
  2 * Math.abs(a.near + a.far - b.near - b.far) < toGrid(100) &&
  a.low < b.high &&
  b.low < a.high &&
  a.near < b.far &&
  b.near < a.far;

/** An end of a piece that is up: as the piece that was laid beside it has it, or else as the joint stands. */
function endOf(
  problem: PlacementProblem,
  band: Band,
  run: Run,
  piece: PossiblePiece,
  up: UpPiece,
  side: 0 | 1,
  laid: readonly LaidPiece[],
  along: readonly Span[],
): LaidEnd {
  const meets = side === 0 ? piece.lowMeets : piece.highMeets;
  if (meets !== 'board') return { meets, position: side === 0 ? up.near : up.far, offset: 0, gap: 0, joints: 0, along };
  const place = run.places[side === 0 ? piece.from : piece.to];
  const beside = laid.map(({ ends }) => ends[1 - side]).find((end) => end.meets === 'board' && end.position === place.at);
  if (beside !== undefined) return { ...beside, joints: 1, along };
  const { below, above } = place.standing ?? { below: 0, above: 0 };
  return {
    meets,
    position: place.at,
    ...buttOn(problem, place, band, (above - below) / 2),
    gap: problem.rules.jointGap + below + above,
    joints: 1,
    along,
  };
}

/** Where along the row's width a piece reaches its end: all the way across where the end is raked. */
function uprightAt(outline: readonly Point[], end: number, { low, high }: Edges): Span[] {
  const upright = sidesOf(outline).flatMap(([a, b]): Span[] =>
    a.x === end && b.x === end ? [[Math.min(a.y, b.y), Math.max(a.y, b.y)]] : [],
  );
  return upright.length > 0 ? upright : [[low, high]];
}

function turnedLeft(ring: Point[]): Point[] {
  return twiceArea(ring) < 0 ? [...ring].reverse() : ring;
}

function describeLocked(
  problem: PlacementProblem,
  as: LaidPiece,
  row: number,
  index: number,
  { board, stock, place }: ReturnType<typeof lockedBoards>['of'][number],
): Piece {
  const { outline, holes } = (problem.request.locked ?? [])[index];
  const lies = problem.parts[as.band.part].mirrored;
  const seen: Place = {
    ...place,
    along: lies.u ? stock.length - place.along - place.length : place.along,
    across: lies.v ? stock.width - place.across - place.width : place.across,
  };
  const piece = describePiece(problem, as, { row, place: 0 }, { stock, place: seen, board, lies });
  return { ...piece, outline, ...(holes && { holes }), locked: true };
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
