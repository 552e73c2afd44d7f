import { checkLayout, tryPlaceBoards } from 'soffitwright';
import type { ModelQuestion } from './placementModel.js';
import type { OracleAnswer } from './placementOracle.js';
import { fullRows, type RoomToSolve } from './placementRows.js';

/** How the placement's count for a room stands beside the solver's. */
export interface Comparison {
  /** Boards of the placement; undefined where it says that there is no layout. */
  readonly ours?: number;
  readonly bound?: number;
  readonly proven?: boolean;
  /** Errors that the check of the layout finds. */
  readonly errors: readonly string[];
  /** ms of the placement. */
  readonly time: number;
  /** The fewest boards for the rows of the answer, and for full rows with the last ripped; undefined where none was asked. */
  readonly ownRows?: Verdict;
  readonly fullRows?: Verdict;
}

export interface Verdict {
  /**
   * `equal`: the optimum is ours. `worse`: it is more than ours, on rows that are not ours. `better`: fewer boards are enough.
   * `impossible`: ours is fewer than the optimum of its own rows. `between`: two ripped widths, and ours is more than the bound
   * but no more than the boards that are enough. `open`: the solver had not the time to say.
   */
  readonly outcome: 'equal' | 'worse' | 'better' | 'impossible' | 'between' | 'open';
  /** The optimum, or the bound that was enough to tell. */
  readonly optimum: number;
  /** ms of the solver for the model as it is; undefined where a bound was enough. */
  readonly time?: number;
  /** Whether it finished. */
  readonly finished: boolean;
}

type Ask = (room: RoomToSolve, question: ModelQuestion) => OracleAnswer;

/** Lays a room, on these rows if any are given, and asks the solver about the rows of the answer and about those given or full rows. */
export function comparePlacement(room: RoomToSolve, ask: Ask, rowWidths?: readonly number[]): Comparison {
  const start = performance.now();
  const attempt = tryPlaceBoards({ ...room, prefer: 'boards', ...(rowWidths && { rowWidths }) });
  const time = performance.now() - start;
  if (!attempt.ok && attempt.reason === 'input') throw new Error(attempt.problems.map(({ message }) => message).join('\n'));
  const full = rowWidths ?? fullRows(room);
  const besideFull = (ours: number) => (full === undefined ? undefined : besideOtherRows(room, full, ours, ask));
  if (!attempt.ok) return { time, errors: [], fullRows: besideFull(Infinity) };
  const { boardsBought, bound, proven, rows } = attempt.value;
  const own = rows.map(({ width }) => width);
  const findings = checkLayout({ ...room, layout: attempt.value });
  const ownRows = besideItsOwnRows(room, own, boardsBought, ask);
  return {
    ours: boardsBought,
    bound,
    proven,
    time,
    errors: findings.filter(({ severity }) => severity === 'error').map(({ message }) => message),
    ownRows,
    fullRows: full?.join() === own.join() ? ownRows : besideFull(boardsBought),
  };
}

/** Lengths in steps of so many mm: where that bound meets ours, nothing is left to ask. */
const COARSE = 10;

/** The model as it is, and only where it takes too long the coarse bound. */
function besideItsOwnRows(room: RoomToSolve, rowWidths: readonly number[], ours: number, ask: Ask): Verdict {
  const bound = ask(room, { rowWidths, strips: 'bound' });
  const { time } = bound;
  const optimum = optimumOf(bound);
  if (bound.status !== 'unfinished') return { ...finer(room, rowWidths, ours, optimum, true, ask), time };
  const coarse = optimumOf(ask(room, { rowWidths, strips: 'bound', grain: COARSE }));
  return { outcome: coarse === ours ? 'equal' : coarse > ours ? 'impossible' : 'open', optimum: coarse, time, finished: false };
}

/** The coarse bound, and only where it does not reach ours the model as it is. */
function besideOtherRows(room: RoomToSolve, rowWidths: readonly number[], ours: number, ask: Ask): Verdict {
  const coarse = optimumOf(ask(room, { rowWidths, strips: 'bound', grain: COARSE }));
  if (coarse >= ours) return { outcome: coarse === ours ? 'equal' : 'worse', optimum: coarse, finished: true };
  const bound = ask(room, { rowWidths, strips: 'bound' });
  if (bound.status === 'unfinished') return { outcome: 'open', optimum: coarse, finished: false };
  return finer(room, rowWidths, ours, optimumOf(bound), false, ask);
}

/** What an optimum of the bound says, which with two ripped widths may be less than can be cut. */
function finer(room: RoomToSolve, rowWidths: readonly number[], ours: number, optimum: number, own: boolean, ask: Ask): Verdict {
  if (optimum >= ours) return { outcome: optimum === ours ? 'equal' : own ? 'impossible' : 'worse', optimum, finished: true };
  const ripped = new Set(rowWidths.filter((width) => room.boards.some((board) => width < board.width)));
  if (ripped.size < 2) return { outcome: 'better', optimum, finished: true };
  const enough = ask(room, { rowWidths, strips: 'cut' });
  if (enough.status === 'unfinished') return { outcome: 'open', optimum, finished: false };
  return { outcome: optimumOf(enough) < ours ? 'better' : 'between', optimum, finished: true };
}

const optimumOf = ({ status, value }: OracleAnswer): number => (status === 'infeasible' ? Infinity : (value ?? Number.NaN));
