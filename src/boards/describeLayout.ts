import { bearingOf } from '../joists/bearing.js';
import { fromGrid } from '../survey/grid.js';
import type { Point } from '../survey/point.js';
import type { Board, BoardLayout, End, Offcut, Piece, Row } from './boardLayout.js';
import { type BoardPlan, cutsOf, type Place } from './cutsOfBoard.js';
import type { Laid, PackedBoard } from './laid.js';
import { type LaidEnd, type LaidPiece, laidPieces } from './laidPieces.js';
import { layoutCounts, pieceAreaM2 } from './layoutCounts.js';
import { cutOut } from './openingsInPieces.js';
import type { PlacementProblem, Stock } from './placementProblem.js';

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

/** Says a layout in plan coordinates and mm. Nothing when an opening would leave a piece in two. */
export function describeLayout(problem: PlacementProblem, laid: Laid): Described | undefined {
  const order = inPlanOrder(problem, laid);
  const plans = laid.boards.map((board) => cutsOf(laid.rows.length, laid.wanted, board));
  const pieces: Piece[] = [];
  const ofPiece = new Map<number, { board: number; place: Place }>();
  for (const [board, plan] of plans.entries()) for (const [index, place] of plan.places) ofPiece.set(index, { board, place });
  const named = nameBoards(order, ofPiece);
  for (const each of order) {
    const { board, place } = ofPiece.get(each.index) as { board: number; place: Place };
    const piece = describePiece(problem, each, laid.boards[board].stock, place, named[board]);
    if (piece === undefined) return undefined;
    pieces.push(piece);
  }
  const boards = plans
    .map((plan, index) => describeBoard(problem, laid.boards[index], plan, named[index]))
    .sort((a, b) => Number(a.id.slice(1)) - Number(b.id.slice(1)));
  return {
    pieces,
    boards,
    ...layoutCounts(
      problem.stocks.map(({ board }) => board),
      pieces,
      boards,
    ),
    rows: describeRows(problem, laid),
    jointLength: jointLength(laid, order),
  };
}

/** Rows and pieces in the order of the plan: from the low wall, from the low end. */
function inPlanOrder(problem: PlacementProblem, laid: Laid): readonly LaidPiece[] {
  const { mirrored } = problem;
  return [...laidPieces(problem, laid)].sort(
    (a, b) => (mirrored.v ? b.row - a.row : a.row - b.row) || (mirrored.u ? b.box.near - a.box.near : a.box.near - b.box.near),
  );
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

function describePiece(problem: PlacementProblem, each: LaidPiece, stock: Stock, place: Place, board: string): Piece | undefined {
  const { mirrored, toPlan } = problem;
  const shape = cutOut(each.box, problem.openings);
  if (shape === undefined) return undefined;
  const ring = (corners: readonly { readonly u: number; readonly v: number }[]): Point[] => {
    const points = corners.map(({ u, v }) => toPlan(u, v));
    return turnsLeft(points) ? points : points.reverse();
  };
  const outline = ring(shape.outline);
  const holes = shape.holes.map(ring);
  const { row, rows, place: number } = each;
  const rowNumber = mirrored.v ? rows - row : row + 1;
  const ends = [
    describeEnd(problem, each.ends[0], place.along === 0),
    describeEnd(problem, each.ends[1], place.along + place.length === stock.length),
  ];
  const edges = [place.across === 0, place.across + place.width === stock.width].map((bound) =>
    bound ? ('bound' as const) : ('cut' as const),
  );
  const piece = {
    id: `${rowNumber}.${mirrored.u ? each.count - number : number + 1}`,
    row: rowNumber,
    outline,
    ...(holes.length > 0 && { holes }),
    length: fromGrid(each.nominal),
    cutLength: fromGrid(place.length),
    width: fromGrid(each.width),
    board,
    at: placeOnPlan(problem, stock, place),
    ends: (mirrored.u ? ends.reverse() : ends) as unknown as [End, End],
    edges: mirrored.v ? { low: edges[1], high: edges[0] } : { low: edges[0], high: edges[1] },
    tight: each.nominal >= stock.length || place.length > stock.length - stock.lengthTolerance,
    massKg: 0,
  };
  return { ...piece, massKg: Math.round(pieceAreaM2(piece) * stock.board.massPerArea * 1000) / 1000 };
}

/** Whether a ring turns anticlockwise on the plan. */
function turnsLeft(points: readonly Point[]): boolean {
  const doubled = points.reduce((sum, { x, y }, i) => {
    const after = points[(i + 1) % points.length];
    return sum + x * after.y - after.x * y;
  }, 0);
  return doubled > 0;
}

export function describeEnd(problem: PlacementProblem, end: LaidEnd, factory: boolean): End {
  const { x, y } = problem.toPlan(end.position, 0);
  const common = {
    meets: end.meets,
    position: problem.frame.direction === 'y' ? x : y,
    made: factory ? ('factory' as const) : ('cut' as const),
  };
  if (end.joist === undefined) return common;
  const { joist } = problem.joists[end.joist];
  return { ...common, joist: joist.id, bearing: bearingOf(joist, fromGrid(end.offset), fromGrid(end.gap), problem.set) };
}

function placeOnPlan({ mirrored }: PlacementProblem, stock: Stock, { along, across, length, width }: Place) {
  return {
    along: fromGrid(mirrored.u ? stock.length - along - length : along),
    across: fromGrid(mirrored.v ? stock.width - across - width : across),
  };
}

function describeBoard(problem: PlacementProblem, { stock }: PackedBoard, plan: BoardPlan, id: string): Board {
  const { mirrored } = problem;
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
        at: placeOnPlan(problem, stock, place),
      }),
    ),
  };
}

function describeRows({ mirrored, toPlan, frame }: PlacementProblem, { rows }: Laid): Row[] {
  const along = (v: number): number => {
    const { x, y } = toPlan(0, v);
    return frame.direction === 'y' ? y : x;
  };
  return (mirrored.v ? [...rows].reverse() : rows).map(({ band }, index) => {
    const ends = [along(band.low), along(band.high)];
    return {
      row: index + 1,
      low: Math.min(...ends),
      high: Math.max(...ends),
      width: fromGrid(band.width),
      ripped: band.ripped,
    };
  });
}

/** Butt joints, and the edges along which pieces of neighbouring rows lie together. */
export function jointLength({ rows }: Laid, pieces: readonly LaidPiece[]): number {
  let length = 0;
  for (const piece of pieces) if (piece.ends[1].meets === 'board') length += piece.width;
  for (let row = 1; row < rows.length; row++) {
    const [below, above] = [row - 1, row].map((at) => merged(pieces.filter((piece) => piece.row === at)));
    for (const [from, to] of below) {
      for (const [start, end] of above) length += Math.max(0, Math.min(to, end) - Math.max(from, start));
    }
  }
  return fromGrid(length);
}

/** Stretches of a row without an opening in them. */
function merged(pieces: readonly LaidPiece[]): (readonly [number, number])[] {
  const order = [...pieces].sort((a, b) => a.box.near - b.box.near);
  const stretches: [number, number][] = [];
  for (const { box, ends } of order) {
    const last = stretches[stretches.length - 1];
    if (ends[0].meets === 'board' && last !== undefined) last[1] = box.far;
    else stretches.push([box.near, box.far]);
  }
  return stretches;
}
