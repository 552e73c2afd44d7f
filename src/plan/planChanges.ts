import type { Piece } from '../boards/boardLayout.js';
import { placeKey } from '../boards/pieceNames.js';
import { directionOf, frameOf } from '../joists/frame.js';
import type { Joist } from '../survey/joist.js';
import type { CeilingPlan } from './ceilingPlan.js';

/** What differs from the plan that was made before. */
export interface PlanChange {
  readonly piece?: string;
  readonly board?: string;
  readonly joist?: string;
  /**
   * `joist`: found elsewhere, or not there; `place`, `length`, `outline`: of a piece; `cut from`: its board; `piece`: one that is
   * no longer laid, or new; `board`: one that is no longer cut, or new.
   */
  readonly what: 'joist' | 'piece' | 'place' | 'length' | 'outline' | 'cut from' | 'board';
  /** Places in mm, across the joists; lengths in mm; ids of boards and their stock. Absent where there was nothing, or is nothing now. */
  readonly was?: string | number;
  readonly now?: string | number;
  /** For a person, in site words; may change between versions. */
  readonly message: string;
}

type Planned = Pick<CeilingPlan, 'joists' | 'layout'>;

/** Every difference between two plans of a ceiling: joists, then pieces in the order of the plan, then boards. */
export function planChanges(before: Planned, after: Planned): PlanChange[] {
  return [...joistChanges(before.joists, after.joists), ...pieceChanges(before, after), ...boardChanges(before, after)];
}

/** What was and what is, where there was or is anything. */
const change = (
  at: Pick<PlanChange, 'piece' | 'board' | 'joist'>,
  what: PlanChange['what'],
  was: string | number | undefined,
  now: string | number | undefined,
  message: string,
): PlanChange => ({ ...at, what, ...(was !== undefined && { was }), ...(now !== undefined && { now }), message });

function joistChanges(before: readonly Joist[], after: readonly Joist[]): PlanChange[] {
  const placeOf = (joist: Joist): string | number => {
    const { into } = frameOf(directionOf([joist]));
    const { start, end } = joist;
    const [from, to] = [into(start).u, into(end).u];
    return from === to ? from : `${from} to ${to}`;
  };
  const now = new Map(after.map((joist) => [joist.id, placeOf(joist)]));
  const was = new Map(before.map((joist) => [joist.id, placeOf(joist)]));
  return [...new Set([...was.keys(), ...now.keys()])]
    .filter((joist) => was.get(joist) !== now.get(joist) && !(now.get(joist) === undefined && livesOn(joist, now)))
    .map((joist) => {
      const found = now.get(joist);
      const before = partsOf(joist).find((part) => was.has(part));
      const old = was.get(joist) ?? (before === undefined ? undefined : was.get(before));
      const told = found === undefined ? `is not there; it was planned at ${old}` : `is at ${found}`;
      const beside = before === undefined || before === joist ? '' : `; ${before} was planned at ${old}`;
      const planned = old === undefined || found === undefined || beside !== '' ? '' : `, not at ${old}`;
      return change({ joist }, 'joist', old, found, `${joist} ${told}${planned}${beside}.`);
    });
}

/** The ids of joists side by side that are one support. */
const partsOf = (joist: string): string[] => joist.split('+');

/** Whether a joist has found another beside it, or two are told one by one now. */
const livesOn = (joist: string, now: ReadonlyMap<string, unknown>): boolean =>
  partsOf(joist).every((part) => now.has(part)) || [...now.keys()].some((id) => partsOf(id).includes(joist));

function pieceChanges({ layout: before }: Planned, { layout: after }: Planned): PlanChange[] {
  const was = new Map(before.pieces.map((piece) => [piece.id, piece]));
  const now = new Map(after.pieces.map((piece) => [piece.id, piece]));
  const gone = before.pieces.filter(({ id }) => !now.has(id));
  return [
    ...gone.map(({ id, length }) =>
      change({ piece: id }, 'piece', length, undefined, `Piece ${id}, ${length} long, is not laid.`),
    ),
    ...after.pieces.flatMap((piece) => {
      const old = was.get(piece.id);
      return old === undefined ? [newPiece(piece)] : changesOf(old, piece);
    }),
  ];
}

const newPiece = ({ id, length, board }: Piece): PlanChange =>
  change({ piece: id, board }, 'piece', undefined, length, `Piece ${id} is new: ${length} long, cut from ${board}.`);

function changesOf(old: Piece, piece: Piece): PlanChange[] {
  const { id, board } = piece;
  const at = { piece: id, board };
  const [was, now] = [old.ends[0].position, piece.ends[0].position];
  const isElsewhere = was !== now || old.row !== piece.row;
  const isOther = placeKey(old) !== placeKey(piece) || shapeOf(old) !== shapeOf(piece);
  return [
    ...(isElsewhere ? [change(at, 'place', was, now, `Piece ${id} begins at ${now}, not at ${was}.`)] : []),
    ...(old.length === piece.length
      ? []
      : [change(at, 'length', old.length, piece.length, `Piece ${id} is ${piece.length} long, not ${old.length}.`)]),
    ...(isOther && !isElsewhere && old.length === piece.length
      ? [change(at, 'outline', old.cutLength, piece.cutLength, `Piece ${id} is cut to another outline.`)]
      : []),
    ...(old.board === board
      ? []
      : [change(at, 'cut from', old.board, board, `Piece ${id} is cut from ${board}, not from ${old.board}.`)]),
  ];
}

const shapeOf = ({ outline, holes = [] }: Piece): string => JSON.stringify([outline, holes]);

function boardChanges({ layout: before }: Planned, { layout: after }: Planned): PlanChange[] {
  const was = new Map(before.boards.map(({ id, stock }) => [id, stock]));
  const now = new Map(after.boards.map(({ id, stock }) => [id, stock]));
  return [...new Set([...was.keys(), ...now.keys()])]
    .filter((board) => was.get(board) !== now.get(board))
    .map((board) => {
      const [old, stock] = [was.get(board), now.get(board)];
      if (stock === undefined) return change({ board }, 'board', old, undefined, `Nothing is cut from board ${board}.`);
      const told = old === undefined ? `Board ${board} is new: ${stock}.` : `Board ${board} is ${stock}, not ${old}.`;
      return change({ board }, 'board', old, stock, told);
    });
}
