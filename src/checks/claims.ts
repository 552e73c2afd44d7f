import type { Finding } from '../rules/finding.js';
import type { BoardStock } from '../survey/boardStock.js';
import { boardClaims } from './boardClaims.js';
import { boughtBoards } from './boughtBoards.js';
import type { Ceiling, Work } from './ceiling.js';
import { compared, wrong } from './claimWrong.js';
import { pieceClaims } from './pieceClaims.js';
import { rowClaims } from './rowClaims.js';
import { pieceAreaM2 } from './sizes.js';
import type { Structure } from './structure.js';

/** A part of the ceiling and what its outlines say. */
export interface CheckedPart {
  readonly ceiling: Ceiling;
  readonly structure: Structure;
}

/** Everything that a layout says of itself and that its outlines do not bear out. */
export function claims(work: Work, parts: readonly CheckedPart[], boards: readonly BoardStock[]): Finding[] {
  return [
    ...countClaims(work, parts, boards),
    ...boundClaims(work, boards),
    ...rowClaims(work, parts),
    ...parts.flatMap(({ ceiling, structure }) => structure.pieces.flatMap((piece) => pieceClaims(piece, ceiling))),
    ...boardClaims(work, boards),
  ];
}

/** How far areas and masses may be rounded: two decimals. */
const ROUNDED = 0.006;

function countClaims(
  { given: { layout }, about }: Work,
  parts: readonly CheckedPart[],
  boards: readonly BoardStock[],
): Finding[] {
  const endJoints = parts.flatMap(({ structure }) => structure.endJoints);
  const edgeJoints = parts.flatMap(({ structure }) => structure.edgeJoints);
  const stockOf = new Map(boards.map((stock) => [stock.id, stock]));
  const taken = layout.boards.flatMap(({ stock }) => stockOf.get(stock) ?? []);
  const bought = boughtBoards(layout.boards, boards);
  const unknown = layout.boards.length - taken.length;
  const priced = bought.every(({ stock }) => stock.price !== undefined);
  const cost = bought.reduce((sum, { stock: { price = 0 } }) => sum + price, 0);
  const area = about.reduce((sum, facts) => sum + pieceAreaM2(facts), 0);
  const boardArea = taken.reduce((sum, { length, width }) => sum + (length * width) / 1e6, 0);
  const jointLength = [...endJoints, ...edgeJoints].reduce((sum, { length }) => sum + length, 0) / 1000;
  const widest = endJoints.reduce((sum, { gap }) => sum + Math.max(0, gap), 0) / 1000;
  const cuts = layout.boards.reduce((sum, board) => sum + (board.cuts?.length ?? 0), 0);
  const counts = (layout.boardsByStock ?? []).flatMap(({ stock, count }) =>
    compared(`boards of ${stock}`, count, bought.filter(({ board }) => board.stock === stock).length, 0, {}, 'boards'),
  );
  return [
    ...compared('boards bought', layout.boardsBought, bought.length + unknown, 0, {}, 'boards'),
    ...counts,
    ...compared('butt joints', layout.endJoints, endJoints.length, 0, {}, 'joints'),
    ...(layout.boards.some((board) => board.cuts) ? compared('cuts', layout.cuts, cuts, 0, {}, 'cuts') : []),
    ...(priced ? compared('cost', layout.cost, cost, ROUNDED) : []),
    ...compared('area of the pieces', layout.areaM2, area, ROUNDED, {}, 'm2'),
    ...compared('waste', layout.wasteAreaM2, boardArea - area, ROUNDED, {}, 'm2'),
    // A long joint may be measured over the gaps of the butt joints that run into it from both sides, or not.
    ...compared('joint length', layout.jointLength, jointLength, 2 * widest + 1, {}, 'mm'),
  ];
}

function boundClaims({ given: { layout } }: Work, boards: readonly BoardStock[]): Finding[] {
  const { bound, proven, boardsAtMinimumLength, cost, costBound } = layout;
  const bought = boughtBoards(layout.boards, boards).length;
  return [
    ...(bound !== undefined && bound > bought ? [wrong('bound', bound, bought, {}, 'boards')] : []),
    ...(bound !== undefined && proven !== undefined && proven !== (bound === bought)
      ? [wrong('proven', proven, bound === bought)]
      : []),
    ...(typeof boardsAtMinimumLength === 'number' && bound !== undefined && boardsAtMinimumLength < bound
      ? [wrong('boards at minimum length', boardsAtMinimumLength, bound, {}, 'boards')]
      : []),
    ...(cost !== undefined && costBound !== undefined && Math.round(costBound * 1000) > Math.round(cost * 1000)
      ? [wrong('least cost', costBound, cost)]
      : []),
  ];
}
