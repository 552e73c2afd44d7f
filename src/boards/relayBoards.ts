import { InputError } from '../survey/inputError.js';
import type { BoardLayout, Piece } from './boardLayout.js';
import type { SoFar } from './boardsSoFar.js';
import { compareInOrder } from './compareInOrder.js';
import { freedSets } from './freedSets.js';
import { InfeasibleError } from './infeasibleError.js';
import { placeKey } from './pieceNames.js';
import { piecesThatFit } from './piecesThatFit.js';
import { placementProblem } from './placementProblem.js';
import { type Relaying, type RelayRequest, relayingOf } from './relaying.js';
import { hasLayoutAtHand } from './searchAtHand.js';

/** Sets of pieces that are given up to see whether the others can stay, and how many that serve are laid out in full. */
const MOST_TRIED = 150;
const MOST_COMPARED = 6;

/**
 * Lays a room once more round the pieces that are up, changing as little of a layout as it can.
 *
 * Pieces that cannot stay where they are, because a joist is not there, are given up, and of the others as few as possible: none
 * first, then one, then two. Where sets of the same size serve, the layout with the fewest poor ends is taken, then with the fewest
 * changed pieces, then with the fewest boards to buy. When that takes too many tries, whole rows are given up, then all pieces, then the rows themselves.
 *
 * @throws InfeasibleError when not even that can be laid
 */
export function relayBoards(request: RelayRequest, soFar: SoFar): BoardLayout {
  const relaying = relayingOf(request, soFar);
  const free = soFar.before.pieces.filter(({ id }) => !soFar.up.has(id));
  const fitting = new Set(piecesThatFit(relaying.request(new Set(free.map(({ id }) => id))), free).map(({ id }) => id));
  const misfits = free.filter(({ id }) => !fitting.has(id));
  let tried = 0;
  let found: BoardLayout[] = [];
  let size = -1;
  for (const freed of freedSets(misfits, free)) {
    if (found.length > 0 && (freed.size > size || found.length >= MOST_COMPARED)) break;
    if (tried++ > MOST_TRIED) break;
    if (!hasLayoutAtHand(placementProblem(relaying.request(freed)))) continue;
    const serving = attempts(relaying, freed);
    if (serving.length > 0) size = freed.size;
    found = [...found, ...serving];
  }
  return best(found, soFar) ?? wholesale(relaying, misfits, free);
}

/** Laid by the preference of the request and, where pieces are given up, with as few pieces in their stead as can be. */
const attempts = (relaying: Relaying, freed: ReadonlySet<string>): BoardLayout[] =>
  [relaying.attempt(freed), ...(freed.size === 0 ? [] : [relaying.attempt(freed, { prefer: 'joints' })])].flatMap((attempt) =>
    attempt.ok ? [attempt.value] : [],
  );

/** Gives up whole rows, then all pieces, then the rows themselves. */
function wholesale(relaying: Relaying, misfits: readonly Piece[], free: readonly Piece[]): BoardLayout {
  const rows = new Set(misfits.map(({ row }) => row));
  const near = (away: number) =>
    new Set(free.filter(({ row }) => [...rows].some((each) => Math.abs(each - row) <= away)).map(({ id }) => id));
  const all = new Set(free.map(({ id }) => id));
  for (const freed of [near(0), near(1), all]) {
    const attempt = relaying.attempt(freed);
    if (attempt.ok) return attempt.value;
  }
  const last = relaying.attempt(all, { rowsToo: true });
  if (last.ok) return last.value;
  throw last.reason === 'infeasible' ? new InfeasibleError(last.findings, last.relaxations) : new InputError(last.problems);
}

/** Ends that nobody has proved, or that have too little timber. */
const POOR: readonly string[] = ['end-off-timber', 'bearing-short', 'end-unproven'];

/** Fewest poor ends, then fewest changed pieces, fewest boards, butt joints and cuts; the first of equals. */
function best(layouts: readonly BoardLayout[], { before }: SoFar): BoardLayout | undefined {
  const places = new Set(before.pieces.map(placeKey));
  const order = ({ pieces, boardsBought, endJoints, cuts, findings }: BoardLayout): number[] => [
    findings.filter(({ code }) => POOR.includes(code)).length,
    pieces.filter((piece) => !places.has(placeKey(piece))).length,
    boardsBought,
    endJoints,
    cuts,
  ];
  return layouts.reduce<BoardLayout | undefined>(
    (least, each) => (least === undefined || compareInOrder(order(each), order(least)) < 0 ? each : least),
    undefined,
  );
}
