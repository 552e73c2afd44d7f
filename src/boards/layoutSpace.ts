import { leastOfRows, type RowsToLay } from './chain.js';
import { wordsFor } from './jointConflicts.js';
import { type JointMerit, jointMerits } from './jointMerits.js';
import type { Shares } from './packKinds.js';
import { type PieceKind, pieceKinds } from './pieceKinds.js';
import type { PlacementProblem } from './placementProblem.js';
import { widthOn } from './possiblePieces.js';
import { leastToEnd, type RowGraph } from './rowGraph.js';
import type { Band } from './rowLayouts.js';
import type { PlacedRow, RowSet } from './rowSets.js';
import { type WeighedLengths, type WeighedWidths, weighWidths } from './weighings.js';

/** Weights of pieces such that those of one board never weigh more than the board. */
export interface Weighing {
  readonly lengths: WeighedLengths;
  readonly widths: WeighedWidths;
  /** Weight of a board, per stock. */
  readonly boards: readonly number[];
  /** The least that all rows weigh together. */
  readonly least: number;
  /** How many of the largest board that is. */
  readonly asked: number;
}

/** One way to divide the room into rows, and what is known before anything is laid. */
export interface RowsBound extends RowSet {
  /** No layout on these rows has fewer boards; Infinity when a row cannot be divided at all. */
  readonly bound: number;
  /** The weighings, those that ask for most boards first. */
  readonly weighings: readonly Weighing[];
  /** No layout on these rows has fewer butt joints. */
  readonly joints: number;
}

/** What no layout on these rows can be below. */
export function rowsBound(problem: PlacementProblem, set: RowSet, lengths: readonly WeighedLengths[]): RowsBound {
  const { rows } = set;
  const graphs = rows.map(({ graph }) => graph);
  const joints = graphs.some(({ nodes }) => nodes === 0) ? Infinity : sum(leastOfRows(graphs, jointCosts(graphs)));
  if (joints === Infinity) return { ...set, bound: Infinity, weighings: [], joints };
  const byWidth = sharpest(problem, rows);
  const weighings = lengths.flatMap((each) =>
    byWidth.map((widths): Weighing => {
      let least = 0;
      for (const row of rows) least += lightestDivision(row, each, widths);
      const boards = each.boards.map((board, stock) => board * widths.boards[stock]);
      return { lengths: each, widths, boards, least, asked: least / Math.max(...boards) };
    }),
  );
  weighings.sort((a, b) => b.asked - a.asked);
  return { ...set, bound: Math.max(1, ...weighings.map(boardsAsked)), weighings, joints };
}

/** What the pieces of a row weigh, per arc. */
function weightsOf({ band, graph }: PlacedRow, lengths: WeighedLengths, widths: WeighedWidths): Float64Array {
  return (lengths.arcs.get(graph) as Float64Array).map(
    (weight, arc) => weight * (widths.of.get(widthOn(graph.piece[arc], band.width)) as number),
  );
}

function lightestDivision(row: PlacedRow, lengths: WeighedLengths, widths: WeighedWidths): number {
  const { band, graph } = row;
  if (graph.narrow) return leastToEnd(graph, weightsOf(row, lengths, widths))[0];
  return (lengths.lightest.get(graph) as number) * (widths.of.get(band.width) as number);
}

/** Weightings of widths that are paired with those of lengths. */
const MOST_WIDTHS = 3;

/** The weightings of widths under which the rows come to most, those that tell the same told once. */
function sharpest(problem: PlacementProblem, rows: readonly PlacedRow[]): WeighedWidths[] {
  const all = weighWidths(
    problem,
    rows.flatMap(({ band: { width }, graph }) => [
      width,
      ...(graph.narrow ? graph.piece.map((piece) => widthOn(piece, width)) : []),
    ]),
  ).map((widths) => ({
    widths,
    asked: sum(rows.map(({ band }) => widths.of.get(band.width) as number)) / Math.max(...widths.boards),
  }));
  all.sort((a, b) => b.asked - a.asked);
  return all
    .filter(({ asked }, at) => at === 0 || asked !== all[at - 1].asked)
    .slice(0, MOST_WIDTHS)
    .map(({ widths }) => widths);
}

/** Boards that a weighing asks for, in whole numbers. */
const boardsAsked = ({ least, boards }: Weighing): number => {
  const most = Math.max(...boards);
  return Math.floor((least + most - 1) / most);
};

/** Everything that is needed to lay boards on one division of the room into rows. */
export interface LayoutSpace extends RowsBound {
  readonly toLay: RowsToLay;
  readonly kinds: readonly PieceKind[];
  /** By which the packing measures waste. */
  readonly shares: readonly Shares[];
  readonly costs: {
    readonly joints: readonly Float64Array[];
    /** What comes before boards and butt joints. */
    readonly first: readonly Float64Array[];
    /** What comes after them. */
    readonly last: readonly Float64Array[];
    readonly weighings: readonly (readonly Float64Array[])[];
    /** By which layouts with few boards are likely to cost little. */
    readonly likely: readonly (readonly Float64Array[])[];
  };
  readonly narrowRows: number;
  /** Per row: how many like it lie side by side on the widest board. */
  readonly lanes: readonly number[];
}

/** What a piece is likely to cost: few pieces first; those over half a board as a whole one; length alone. */
const LIKELY: readonly ((length: number, board: number) => number)[] = [
  (length, board) => board + length,
  (length, board) => (2 * length > board ? board : length),
  (length) => length,
];
/** Weighings by which sets of pieces are judged before they are packed. */
const MOST_SHARES = 60;
/** Weighings whose caps a search watches. */
const MOST_WATCHED = 10;

export function layoutSpace(problem: PlacementProblem, bound: RowsBound): LayoutSpace {
  const { rows, weighings } = bound;
  const graphs = rows.map(({ graph }) => graph);
  const { kinds, ofRow } = pieceKinds(
    problem,
    rows.map(({ graph, band }) => ({ graph, width: band.width })),
  );
  const shared = <T extends object>(make: (row: PlacedRow) => T): T[] => {
    const made = new Map<string, T>();
    return rows.map((row, at) => {
      const key = `${graphs.indexOf(row.graph)} ${row.band.width}`;
      const known = made.get(key) ?? make(rows[at]);
      made.set(key, known);
      return known;
    });
  };
  const byJoist = jointMerits(problem);
  const [longest] = problem.stocks;
  return {
    ...bound,
    toLay: { graphs, kinds: ofRow, kindCount: kinds.length, conflicts: bound.conflicts, words: wordsFor(problem) },
    kinds,
    shares: weighings.slice(0, MOST_SHARES).map(({ lengths, widths, boards }) => ({
      kinds: Float64Array.from(kinds, ({ size, width }) => (lengths.of.get(size) as number) * (widths.of.get(width) as number)),
      boards,
    })),
    costs: {
      joints: jointCosts(graphs),
      first: shared(({ graph, band }) => arcCosts(graph, (arc) => firstCost(problem, graph, arc, band, byJoist))),
      last: shared(({ graph }) => arcCosts(graph, (arc) => lastCost(problem, graph, arc, byJoist))),
      weighings: weighings.slice(0, MOST_WATCHED).map(({ lengths, widths }) => shared((row) => weightsOf(row, lengths, widths))),
      likely: LIKELY.map((weigh) =>
        shared(({ graph, band }) =>
          arcCosts(graph, (arc) => {
            const length = graph.piece[arc]?.cut ?? 0;
            return (weigh(length, longest.length) / 1e3) * (widthOn(graph.piece[arc], band.width) / 1e3);
          }),
        ),
      ),
    },
    lanes: rows.map(({ band }) =>
      Math.max(...problem.stocks.map(({ width, kerf }) => Math.floor((width + kerf) / (band.width + kerf)))),
    ),
    narrowRows: rows.filter(({ band }) => band.width < problem.rules.preferredRowWidth).length,
  };
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, each) => total + each, 0);

const arcCosts = (graph: RowGraph, cost: (arc: number) => number): Float64Array =>
  Float64Array.from(graph.piece, (piece, arc) => (piece === undefined ? 0 : cost(arc)));

function jointCosts(graphs: readonly RowGraph[]): Float64Array[] {
  const known = new Map<RowGraph, Float64Array>();
  return graphs.map((graph) => {
    const costs = known.get(graph) ?? arcCosts(graph, (arc) => (graph.joist[arc] >= 0 ? 1 : 0));
    known.set(graph, costs);
    return costs;
  });
}

/** A thousand of what comes later count for one of what comes before it. */
const THOUSAND = 1000;

/** What the preference looks at before boards and butt joints: heavy pieces, unproven ends, poor bearings. */
function firstCost(
  { prefer, rules, stocks }: PlacementProblem,
  graph: RowGraph,
  arc: number,
  band: Band,
  merits: readonly JointMerit[],
) {
  const merit = graph.joist[arc] < 0 ? undefined : merits[graph.joist[arc]];
  if (prefer === 'certainty') return merit?.unproven ? 1 : 0;
  if (prefer !== 'tradesperson') return 0;
  const cut = graph.piece[arc]?.cut ?? 0;
  const mass = (cut / 1e6) * (widthOn(graph.piece[arc], band.width) / 1e6) * stocks[0].board.massPerArea;
  const heavy = rules.pieceMass !== null && mass > rules.pieceMass ? 1 : 0;
  return (heavy * THOUSAND + (merit?.unproven ? 1 : 0)) * THOUSAND + (merit?.poor ? 1 : 0);
}

/** What it looks at after them: poor bearings, pieces under the preferred length. */
function lastCost({ prefer, rules }: PlacementProblem, graph: RowGraph, arc: number, merits: readonly JointMerit[]): number {
  const poor = prefer !== 'tradesperson' && graph.joist[arc] >= 0 && merits[graph.joist[arc]].poor ? 1 : 0;
  return poor * THOUSAND + ((graph.piece[arc]?.nominal ?? 0) < rules.preferredPieceLength ? 1 : 0);
}
