import { numberOf } from '../rules/ruleValue.js';
import { rulesOf } from '../rules/withRules.js';
import type { BoardStock } from '../survey/boardStock.js';
import { toGrid } from '../survey/grid.js';
import { attemptPlacement } from './attemptPlacement.js';
import type { BoardLayout, Piece } from './boardLayout.js';
import { isCutOut, onTheirBoards, openedBoards, type Rest, restsOf, type SoFar } from './boardsSoFar.js';
import type { PlacementAttempt } from './infeasibleError.js';
import { layoutCounts } from './layoutCounts.js';
import type { LockedPiece } from './lockedPieces.js';
import { layBoards } from './placeBoards.js';
import type { PlacementRequest } from './placementRequest.js';
import type { Preference } from './preference.js';
import { boundReason } from './reasons.js';
import { renamedBoards } from './renamedBoards.js';
import type { LayingRequest } from './standing.js';
import { stocksOf } from './stocksOf.js';

/** A room to lay once more; `boards` with what is still to be had of each. */
export type RelayRequest = Omit<PlacementRequest, 'locked' | 'rowWidths'>;

/** By another preference than the request's; with other rows. */
interface How {
  readonly prefer?: Preference;
  readonly rowsToo?: boolean;
}

/** Laying a room once more round what stays. */
export interface Relaying {
  /** What is asked when these pieces, by their ids, are given up. */
  readonly request: (freed: ReadonlySet<string>) => LayingRequest;
  readonly attempt: (freed: ReadonlySet<string>, how?: How) => PlacementAttempt<BoardLayout>;
}

const NONE: ReadonlySet<string> = new Set();

export function relayingOf(request: RelayRequest, soFar: SoFar): Relaying {
  const rules = rulesOf(request.rules);
  const stocks = stocksOf(request.boards, rules);
  const least = { length: toGrid(numberOf(rules, 'piece.minimumLength')), width: toGrid(numberOf(rules, 'row.minimumWidth')) };
  const { before, up, cut, lost } = soFar;
  const opened = openedBoards(soFar);
  const stays = (freed: ReadonlySet<string>) => before.pieces.filter(({ id }) => !up.has(id) && !freed.has(id));

  /** `onBoards`: pieces that are to be cut yet, and stay on the boards that they were to be cut from. */
  const asked = (freed: ReadonlySet<string>, onBoards: ReadonlySet<string>) => {
    const staying = stays(freed);
    const settled = new Set(staying.filter(({ id }) => cut.has(id) || onBoards.has(id)).map(({ id }) => id));
    const rests = restsOf(soFar, stocks, settled, least);
    const whole = new Set(
      before.pieces.filter(({ id, board }) => onBoards.has(id) && !opened.has(board)).map(({ board }) => board),
    );
    const wanted: LayingRequest = {
      ...request,
      boards: [...request.boards.map((stock) => withoutUsed(stock, before, whole)), ...rests.map(({ stock }) => stock)],
      rowWidths: before.rows.map(({ width }) => width),
      locked: before.pieces.filter(({ id }) => up.has(id) || settled.has(id)).map((piece) => lockedOf(piece, before)),
      kept: staying.filter(({ id }) => !settled.has(id)),
      boardIds: before.boards.map(({ id }) => id),
    };
    return { wanted, rests };
  };

  const lay = (freed: ReadonlySet<string>, onBoards: ReadonlySet<string>, { prefer = request.prefer, rowsToo = false }: How) =>
    attemptPlacement((): BoardLayout => {
      const { wanted, rests } = asked(freed, onBoards);
      const { rowWidths: _, ...free } = wanted;
      const layout = layBoards({ ...(rowsToo ? free : wanted), ...(prefer && { prefer }) });
      const joined = onTheirBoards(namedAsBefore(layout, before, opened, rests), rests, stocks, opened);
      const pieces = joined.pieces.map(({ locked: _locked, ...piece }) =>
        up.has(piece.id) ? { ...piece, locked: true as const } : piece,
      );
      return { ...layout, ...joined, pieces, ...layoutCounts(request.boards, pieces, joined.boards) };
    });

  return {
    request: (freed) => asked(freed, NONE).wanted,
    attempt: (freed, how = {}) => {
      const anew = lay(freed, NONE, how);
      const uncut = stays(freed).filter((piece) => !isCutOut(soFar, piece) && !lost.has(piece.board));
      const isToBeHad = request.boards.every(({ id, available = Infinity }) => available >= boardsOf(before, uncut, opened, id));
      if (!isToBeHad) return anew;
      const asBefore = lay(freed, new Set(uncut.map(({ id }) => id)), how);
      return asBefore.ok && (!anew.ok || asBefore.value.boardsBought <= anew.value.boardsBought)
        ? withBoundOf(asBefore, anew)
        : anew;
    },
  };
}

/** How many boards of a stock, not cut into yet, some pieces are to be cut from. */
const boardsOf = ({ boards }: SoFar['before'], pieces: readonly Piece[], opened: ReadonlySet<string>, stock: string): number =>
  boards.filter(({ id, stock: of }) => of === stock && !opened.has(id) && pieces.some(({ board }) => board === id)).length;

/**
 * New boards take the name of the board before, of the same stock and not cut into yet, of which they give most pieces; the others
 * the next numbers. What is cut from a rest is named by it.
 */
function namedAsBefore(
  { pieces, boards }: Pick<BoardLayout, 'pieces' | 'boards'>,
  before: SoFar['before'],
  opened: ReadonlySet<string>,
  rests: readonly Rest[],
): Pick<BoardLayout, 'pieces' | 'boards'> {
  const known = new Set(before.boards.map(({ id }) => id));
  const taken = new Set([...opened, ...boards.filter(({ id }) => known.has(id)).map(({ id }) => id)]);
  const names = new Map<string, string>();
  let count = 0;
  for (const { id, stock } of boards) {
    if (known.has(id)) continue;
    const own = new Set(pieces.filter(({ board }) => board === id).map((piece) => piece.id));
    const [most] = before.boards
      .filter((old) => old.stock === stock && !taken.has(old.id))
      .map((old) => ({ id: old.id, count: before.pieces.filter((piece) => piece.board === old.id && own.has(piece.id)).length }))
      .filter((old) => old.count > 0)
      .sort((one, other) => other.count - one.count);
    let name = rests.some((rest) => rest.stock.id === stock) ? stock : most?.id;
    while (name === undefined) {
      count++;
      if (!known.has(`B${count}`)) name = `B${count}`;
    }
    names.set(id, name);
    taken.add(name);
  }
  return renamedBoards({ pieces, boards }, names);
}

/** The boards of one layout and what is known of the least number of them from another, which was free to cut them otherwise. */
function withBoundOf(
  asBefore: { readonly ok: true; readonly value: BoardLayout },
  anew: PlacementAttempt<BoardLayout>,
): PlacementAttempt<BoardLayout> {
  const { value } = asBefore;
  const bound = anew.ok ? Math.min(anew.value.bound, value.boardsBought) : 0;
  const { boardsAtMinimumLength, costBound } = anew.ok ? anew.value : { boardsAtMinimumLength: null, costBound: undefined };
  return {
    ok: true,
    value: {
      ...value,
      bound,
      boardsAtMinimumLength,
      ...(costBound !== undefined && { costBound }),
      proven: bound === value.boardsBought,
      piecesProven: false,
      reasons: [`${value.boardsBought} boards are not cut into yet.`, boundReason(value.boardsBought, bound, 'rows that go on')],
    },
  };
}

/** What is to be had of a stock when these of its boards are spoken for. */
function withoutUsed(stock: BoardStock, { boards }: SoFar['before'], spokenFor: ReadonlySet<string>): BoardStock {
  if (stock.available === undefined) return stock;
  const used = boards.filter(({ id, stock: of }) => of === stock.id && spokenFor.has(id)).length;
  return { ...stock, available: Math.max(0, stock.available - used) };
}

const lockedOf = ({ id, outline, holes, board, at }: Piece, { boards }: SoFar['before']): LockedPiece => {
  const stock = boards.find((each) => each.id === board)?.stock;
  return { id, outline, ...(holes && { holes }), board, at, ...(stock !== undefined && { stock }) };
};
