import { bearingOf } from '../joists/bearing.js';
import { fromGrid } from '../survey/grid.js';
import { anticlockwise } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import type { Board, BoardLayout, End, Offcut, Piece, Row } from './boardLayout.js';
import { type BoardPlan, cutsOf, type Place } from './cutsOfBoard.js';
import { jointLength } from './jointLength.js';
import type { Laid, PackedBoard, WantedPiece } from './laid.js';
import { type LaidEnd, type LaidPiece, laidPieces } from './laidPieces.js';
import { layoutCounts, pieceAreaM2 } from './layoutCounts.js';
import type { Part } from './partsOf.js';
import { pieceMarks } from './pieceMarks.js';
import type { PlacementProblem } from './placementProblem.js';
import type { Stock } from './stocksOf.js';

/** The part of a result that a layout itself determines. */
export type Described = Pick<
  BoardLayout,
  | 'pieces'
  | 'boards'
  | 'offcuts'
  | 'rows'
  | 'endJoints'
  | 'boardsBought'
  | 'boardsByStock'
  | 'cost'
  | 'areaM2'
  | 'wasteAreaM2'
  | 'cuts'
  | 'jointLength'
>;

/** Says a layout in plan coordinates and mm. */
export function describeLayout(problem: PlacementProblem, laid: Laid): Described {
  const numbers = rowNumbers(problem, laid);
  const inPlace = laidPieces(problem, laid);
  const order = inPlanOrder(problem, numbers, inPlace);
  const wanted = laid.wanted.map((each, index) => asCut(each, inPlace[index]));
  const plans = laid.boards.map((board) => cutsOf(wanted, board));
  const ofPiece = new Map<number, { board: number; place: Place }>();
  for (const [board, plan] of plans.entries()) for (const [index, place] of plan.places) ofPiece.set(index, { board, place });
  const named = nameBoards(order, ofPiece);
  let inRow = 0;
  const pieces = order.map((each, at): Piece => {
    inRow = order[at - 1]?.row === each.row ? inRow + 1 : 1;
    const { board, place } = ofPiece.get(each.index) as { board: number; place: Place };
    const { stock } = laid.boards[board];
    const lies = mirroredOf(problem, laid, laid.boards[board]);
    return describePiece(problem, each, { row: numbers[each.row], place: inRow }, { stock, place, board: named[board], lies });
  });
  const boards = plans
    .map((plan, index) => describeBoard(mirroredOf(problem, laid, laid.boards[index]), laid.boards[index], plan, named[index]))
    .sort((a, b) => Number(a.id.slice(1)) - Number(b.id.slice(1)));
  return describeAll(problem, order, { pieces, boards, rows: describeRows(problem, laid, numbers) });
}

/** Pieces in the order of the plan, and what is to be counted of them. */
export const describeAll = (
  { stocks }: PlacementProblem,
  order: readonly LaidPiece[],
  told: Pick<Described, 'pieces' | 'boards' | 'rows'>,
): Described => ({
  ...told,
  ...layoutCounts(
    stocks.map(({ board }) => board),
    told.pieces,
    told.boards,
  ),
  endJoints: order.reduce((sum, { ends }) => sum + ends[1].joints, 0),
  jointLength: jointLength(order),
});

/** A piece that is no rectangle is cut from the one about it: half a gap can make that a hair less than its place. */
function asCut(wanted: WantedPiece, { box }: LaidPiece): WantedPiece {
  if (wanted.piece.box === undefined) return wanted;
  return { ...wanted, piece: { ...wanted.piece, cut: box.far - box.near }, cutWidth: box.high - box.low };
}

/** For each row its number on the plan: through all parts, in each of them from the low wall. */
export function rowNumbers({ parts }: PlacementProblem, { rows }: Laid): number[] {
  return rows.map(({ band: { part } }, row) => {
    const first = rows.findIndex(({ band }) => band.part === part);
    const count = rows.filter(({ band }) => band.part === part).length;
    return parts[part].mirrored.v ? 2 * first + count - row : row + 1;
  });
}

/** In the order of the plan: row by row, in each of them from the low end. */
export function inPlanOrder(
  { parts }: PlacementProblem,
  numbers: readonly number[],
  pieces: readonly LaidPiece[],
): readonly LaidPiece[] {
  return [...pieces].sort((a, b) => {
    const { u, v } = parts[a.band.part].mirrored;
    return (
      numbers[a.row] - numbers[b.row] ||
      (u ? b.box.far - a.box.far : a.box.near - b.box.near) ||
      (v ? b.box.high - a.box.high : a.box.low - b.box.low)
    );
  });
}

/** A board is told the way its pieces lie: seen from the ends from which their part is looked at. */
function mirroredOf({ parts }: PlacementProblem, { wanted, rows }: Laid, { whole, strips }: PackedBoard): Part['mirrored'] {
  const [first] = [...whole, ...strips.flatMap(({ pieces }) => pieces)];
  return parts[rows[wanted[first].row].band.part].mirrored;
}

/** B1, B2 … in the order in which the pieces need them. */
function nameBoards(order: readonly LaidPiece[], ofPiece: ReadonlyMap<number, { readonly board: number }>): string[] {
  const names: string[] = [];
  let count = 0;
  for (const { index } of order) {
    const { board } = ofPiece.get(index) as { board: number };
    names[board] ??= `B${++count}`;
  }
  return names;
}

/** The board that a piece is cut from, where on it, and the way it is told. */
export interface FromBoard {
  readonly stock: Stock;
  readonly place: Place;
  readonly board: string;
  readonly lies: Part['mirrored'];
}

export function describePiece(
  problem: PlacementProblem,
  each: LaidPiece,
  { row, place: number }: { readonly row: number; readonly place: number },
  { stock, place, board, lies }: FromBoard,
): Piece {
  const part = problem.parts[each.band.part];
  const { mirrored, toPlan, zone } = part;
  const ring = (corners: readonly Point[]): readonly Point[] => anticlockwise(corners.map(({ x, y }) => toPlan(x, y)));
  const outline = ring(each.shape.outline);
  const holes = each.shape.holes.map(ring);
  const marks = pieceMarks(part, each.shape);
  const atEnds = [place.along === 0, place.along + place.length === stock.length];
  const atEdges = [place.across === 0, place.across + place.width === stock.width];
  // On a board that pieces of two parts share, one of them may lie the other way round than its part is looked at.
  const isTurned = { u: lies.u !== mirrored.u, v: lies.v !== mirrored.v };
  if (isTurned.u) atEnds.reverse();
  if (isTurned.v) atEdges.reverse();
  const ends = atEnds.map((factory, end) =>
    describeEnd(problem, part, each.ends[end], marks.rakes[end], factory && marks.square[end]),
  );
  const edges = atEdges.map((isOwn, edge) => (isOwn && marks.level[edge] ? ('bound' as const) : ('cut' as const)));
  const piece = {
    id: `${row}.${number}`,
    row,
    ...(zone !== undefined && { zone }),
    outline,
    ...(holes.length > 0 && { holes }),
    length: fromGrid(each.nominal),
    cutLength: fromGrid(place.length),
    width: fromGrid(each.box.high - each.box.low),
    edgeLengths: marks.edgeLengths,
    ...(marks.hand !== undefined && { hand: marks.hand }),
    board,
    at: placeOnPlan(lies, stock, place),
    ends: (mirrored.u ? ends.reverse() : ends) as unknown as [End, End],
    edges: mirrored.v ? { low: edges[1], high: edges[0] } : { low: edges[0], high: edges[1] },
    tight: each.nominal >= stock.length || place.length > stock.length - stock.lengthTolerance,
    massKg: 0,
  };
  return { ...piece, massKg: Math.round(pieceAreaM2(piece) * stock.board.massPerArea * 1000) / 1000 };
}

function describeEnd(
  { joists, set }: PlacementProblem,
  { toPlan, frame }: Part,
  end: LaidEnd,
  rake: number | undefined,
  factory: boolean,
): End {
  const { x, y } = toPlan(end.position, 0);
  const common = {
    meets: end.meets,
    position: frame.direction === 'y' ? x : y,
    made: factory ? ('factory' as const) : ('cut' as const),
    ...(rake !== undefined && { rake }),
  };
  if (end.joist === undefined) return common;
  const { joist } = joists[end.joist];
  return { ...common, joist: joist.id, bearing: bearingOf(joist, fromGrid(end.offset), fromGrid(end.gap), set) };
}

function placeOnPlan(mirrored: Part['mirrored'], stock: Stock, { along, across, length, width }: Place) {
  return {
    along: fromGrid(mirrored.u ? stock.length - along - length : along),
    across: fromGrid(mirrored.v ? stock.width - across - width : across),
  };
}

function describeBoard(mirrored: Part['mirrored'], { stock }: PackedBoard, plan: BoardPlan, id: string): Board {
  const along = (at: number): number => fromGrid(mirrored.u ? stock.length - at : at);
  const across = (at: number): number => fromGrid(mirrored.v ? stock.width - at : at);
  const between = (a: number, b: number) => ({ from: Math.min(a, b), to: Math.max(a, b) });
  return {
    id,
    stock: stock.board.id,
    cuts: plan.cuts.map(({ kind, at, from, to }) =>
      kind === 'cross'
        ? { kind, at: along(at), ...between(across(from), across(to)) }
        : { kind, at: across(at), ...between(along(from), along(to)) },
    ),
    offcuts: plan.offcuts.map(
      (place): Offcut => ({
        board: id,
        length: fromGrid(place.length),
        width: fromGrid(place.width),
        at: placeOnPlan(mirrored, stock, place),
      }),
    ),
  };
}

function describeRows({ parts }: PlacementProblem, { rows }: Laid, numbers: readonly number[]): Row[] {
  return rows
    .map(({ band }, at): Row => {
      const { toPlan, frame, zone } = parts[band.part];
      const along = (v: number): number => {
        const { x, y } = toPlan(0, v);
        return frame.direction === 'y' ? y : x;
      };
      const ends = [along(band.low), along(band.high)];
      return {
        row: numbers[at],
        low: Math.min(...ends),
        high: Math.max(...ends),
        width: fromGrid(band.width),
        ripped: band.ripped,
        ...(zone !== undefined && { zone }),
      };
    })
    .sort((a, b) => a.row - b.row);
}
