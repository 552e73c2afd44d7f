import type { Division, Laid, PackedBoard, WantedPiece } from './laid.js';
import type { LayoutSpace } from './layoutSpace.js';
import { measure } from './measures.js';
import type { KindsOnBoard } from './packKinds.js';
import type { PlacementProblem } from './placementProblem.js';
import { type PossiblePiece, widthOn } from './possiblePieces.js';
import type { RowLayout } from './rowLayouts.js';
import type { RowPattern } from './rowPatterns.js';

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
    const { graph } = rows[row];
    const pieces = graph.runs.map((): number[] => []);
    const joints: number[] = [];
    for (const arc of pattern.arcs) {
      const piece = graph.piece[arc];
      if (piece === undefined) continue;
      const run = graph.runs[graph.run[arc]];
      pieces[graph.run[arc]].push(graph.index[arc]);
      if (graph.joist[arc] >= 0) joints.push(run.places[piece.to].at);
      ofKind[toLay.kinds[row][arc]].push(wanted.length);
      wanted.push(wantedPiece(layout, row, piece));
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

function wantedPiece({ bands }: RowLayout, row: number, piece: PossiblePiece): WantedPiece {
  const band = bands[row];
  const { low, high } = piece.box ?? band;
  return {
    piece,
    width: widthOn(piece, band.width),
    cutWidth: high - low,
    atHigh: low > band.low && high === band.high,
    row,
    rippedLow: bands[row - 1]?.part !== band.part && bands[row + 1]?.part === band.part,
    lowJoint: piece.lowMeets === 'board',
    highJoint: piece.highMeets === 'board',
  };
}
