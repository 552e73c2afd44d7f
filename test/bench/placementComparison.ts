import { tryPlaceBoards } from 'soffitwright';
import type { RoomToLay } from '../generators/rooms.js';
import type { ModelQuestion } from './placementModel.js';
import type { OracleAnswer } from './placementOracle.js';
import { fullRows, type RoomToSolve } from './placementRun.js';

/** How the placement's count for a room stands beside the solver's. */
export interface Comparison {
  /** Boards of the placement; undefined where it says that there is no layout. */
  readonly ours?: number;
  readonly bound?: number;
  readonly proven?: boolean;
  /** ms of the placement. */
  readonly time: number;
  /** The fewest boards for the rows of the answer, and for full rows with the last ripped; undefined where none was asked. */
  readonly ownRows?: Verdict;
  readonly fullRows?: Verdict;
}

export interface Verdict {
  /**
   * `equal`: the optimum is ours. `worse`: it is more than ours, on rows of its own. `better`: fewer boards are enough.
   * `impossible`: the solver says that fewer than the optimum cannot do and ours is fewer. `between`: two ripped widths, and
   * ours is not fewer than the bound nor more than boards that are enough. `unfinished`: out of time.
   */
  readonly outcome: 'equal' | 'worse' | 'better' | 'impossible' | 'between' | 'unfinished';
  readonly optimum: number;
  /** ms of the solver. */
  readonly time: number;
}

type Ask = (room: RoomToSolve, question: ModelQuestion) => OracleAnswer;

/** Lays a room and asks the solver about the rows of the answer and about full rows. */
export function comparePlacement(room: RoomToLay, ask: Ask): Comparison {
  const start = performance.now();
  const attempt = tryPlaceBoards({ ...room, prefer: 'boards' });
  const time = performance.now() - start;
  if (!attempt.ok && attempt.reason === 'input') throw new Error(attempt.problems.map(({ message }) => message).join('\n'));
  const full = fullRows(room);
  const judgedFull = (ours: number) => (full === undefined ? undefined : judge(room, full, ours, false, ask));
  if (!attempt.ok) return { time, fullRows: judgedFull(Infinity) };
  const { boardsBought, bound, proven, rows } = attempt.value;
  const own = rows.map(({ width }) => width);
  const ownRows = judge(room, own, boardsBought, true, ask);
  const same = full !== undefined && full.join() === own.join();
  return { ours: boardsBought, bound, proven, time, ownRows, fullRows: same ? ownRows : judgedFull(boardsBought) };
}

/** Lengths in steps of so many mm are tried first: where that bound meets ours, nothing is left to ask. */
const COARSE = 10;

function judge(room: RoomToSolve, rowWidths: readonly number[], ours: number, own: boolean, ask: Ask): Verdict {
  const coarse = ask(room, { rowWidths, strips: 'bound', grain: COARSE });
  const least = optimumOf(coarse);
  if (least >= ours)
    return { outcome: least === ours ? 'equal' : own ? 'impossible' : 'worse', optimum: least, time: coarse.time };
  const bound = ask(room, { rowWidths, strips: 'bound' });
  const optimum = optimumOf(bound);
  const verdict = (outcome: Verdict['outcome']): Verdict => ({ outcome, optimum, time: coarse.time + bound.time });
  if (bound.status === 'unfinished') return verdict('unfinished');
  if (optimum === ours) return verdict('equal');
  if (optimum > ours) return verdict(own ? 'impossible' : 'worse');
  const ripped = new Set(rowWidths.filter((width) => room.boards.some((board) => width < board.width)));
  if (ripped.size < 2) return verdict('better');
  const enough = ask(room, { rowWidths, strips: 'cut' });
  if (enough.status === 'unfinished') return verdict('unfinished');
  return verdict((enough.value ?? Infinity) < ours ? 'better' : 'between');
}

const optimumOf = ({ status, value }: OracleAnswer): number => (status === 'infeasible' ? Infinity : (value ?? Number.NaN));
