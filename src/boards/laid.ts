import type { LayoutSpace, PlacedRow } from './layoutSpace.js';
import { type Measures, measure } from './measures.js';
import type { KindsOnBoard } from './packKinds.js';
import type { PlacementProblem, Stock } from './placementProblem.js';
import type { PossiblePiece } from './possiblePieces.js';
import type { RowLayout } from './rowLayouts.js';
import type { RowPattern } from './rowPatterns.js';

/** A whole layout in the problem's coordinates. */
export interface Laid {
  readonly layout: RowLayout;
  readonly rows: readonly PlacedRow[];
  readonly divisions: readonly Division[];
  readonly wanted: readonly WantedPiece[];
  readonly boards: readonly PackedBoard[];
  readonly measures: Measures;
  /** What the preference looks at before boards and butt joints, as one number. */
  readonly first: number;
}

/** How a row is divided. */
export interface Division {
  /** Per run, indices into its pieces. */
  readonly pieces: readonly (readonly number[])[];
  /** Positions of the butt joints, and which joists they are on. */
  readonly joints: readonly number[];
  readonly joists: readonly number[];
}

/** A piece to be cut: its length, and the width of its row. */
export interface WantedPiece {
  readonly piece: PossiblePiece;
  readonly width: number;
  /** Index of its row, from the low side. */
  readonly row: number;
  /** Whether its ends are butt joints. */
  readonly lowJoint: boolean;
  readonly highJoint: boolean;
}

/** How one board is used; as {@link KindsOnBoard}, with pieces told by their index among the wanted. */
export interface PackedBoard {
  readonly stock: Stock;
  readonly whole: readonly number[];
  readonly strips: readonly { readonly width: number; readonly pieces: readonly number[] }[];
}

/** Names the pieces of a layout that a search has found. */
export function laidFrom(
  problem: PlacementProblem,
  space: LayoutSpace,
  patterns: readonly RowPattern[],
  packed: readonly KindsOnBoard[],
): Laid {
  const { layout, rows, toLay } = space;
  const wanted: WantedPiece[] = [];
  const ofKind = space.kinds.map((): number[] => []);
  const divisions = patterns.map((pattern, row): Division => {
    const { graph, band } = rows[row];
    const pieces = graph.runs.map((): number[] => []);
    const joints: number[] = [];
    for (const arc of pattern.arcs) {
      const piece = graph.piece[arc];
      if (piece === undefined) continue;
      const run = graph.runs[graph.run[arc]];
      pieces[graph.run[arc]].push(graph.index[arc]);
      if (graph.joist[arc] >= 0) joints.push(run.places[piece.to]);
      ofKind[toLay.kinds[row][arc]].push(wanted.length);
      wanted.push({ piece, width: band.width, row, lowJoint: piece.from > 0, highJoint: piece.to < run.places.length - 1 });
    }
    return { pieces, joints, joists: pattern.joists };
  });
  const next = (kind: number): number => ofKind[kind].shift() as number;
  const boards = packed.map(
    ({ stock, whole, strips }): PackedBoard => ({
      stock: problem.stocks[stock],
      whole: whole.map(next),
      strips: strips.map(({ width, kinds }) => ({ width, pieces: kinds.map(next) })),
    }),
  );
  const first = patterns.reduce(
    (total, { arcs }, row) => total + arcs.reduce((sum, arc) => sum + space.costs.first[row][arc], 0),
    0,
  );
  const unmeasured = { layout, rows, divisions, wanted, boards };
  return { ...unmeasured, measures: measure(problem, unmeasured), first };
}
