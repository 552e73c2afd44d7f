import type { Division, Laid, PackedBoard, WantedPiece } from './laid.js';
import type { LaidRows } from './laidRows.js';
import { measure } from './measures.js';
import type { PlacementProblem } from './placementProblem.js';
import { type PossiblePiece, widthOn } from './possiblePieces.js';
import type { RowLayout } from './rowLayouts.js';
import type { RowSpace } from './rowSpace.js';

/** Names the pieces of a layout that a search has found. */
export function laidFrom(problem: PlacementProblem, space: RowSpace, { paths, packed }: LaidRows): Laid {
  const { layout, rows } = space.set;
  const wanted: WantedPiece[] = [];
  const ofKind = space.kinds.map((): number[] => []);
  const divisions = paths.map(({ arcs, joists }, row): Division => {
    const { graph } = rows[row];
    const pieces = graph.runs.map((): number[] => []);
    const joints: number[] = [];
    for (const arc of arcs) {
      const piece = graph.piece[arc];
      if (piece === undefined) continue;
      const run = graph.runs[graph.run[arc]];
      pieces[graph.run[arc]].push(graph.index[arc]);
      if (graph.joist[arc] >= 0) joints.push(run.places[piece.to].at);
      ofKind[space.sorts[row].kinds[arc]].push(wanted.length);
      wanted.push(wantedPiece(layout, row, piece));
    }
    return { pieces, joints, joists };
  });
  const next = (kind: number): number => ofKind[kind].shift() as number;
  const boards = packed.map(
    ({ stock, whole, strips }): PackedBoard => ({
      stock: problem.stocks[stock],
      whole: whole.map(next),
      strips: strips.map(({ width, kinds }) => ({ width, pieces: kinds.map(next) })),
    }),
  );
  const unmeasured = { layout, rows, divisions, wanted, boards };
  return { ...unmeasured, measures: measure(problem, unmeasured) };
}

function wantedPiece({ bands }: RowLayout, row: number, piece: PossiblePiece): WantedPiece {
  const band = bands[row];
  const { low, high } = piece.box ?? band;
  const rippedLow = bands[row - 1]?.part !== band.part && bands[row + 1]?.part === band.part;
  return {
    piece,
    width: widthOn(piece, band.width),
    cutWidth: high - low,
    atHigh: high === band.high && (low > band.low || rippedLow),
    row,
    rippedLow,
    lowJoint: piece.lowMeets === 'board',
    highJoint: piece.highMeets === 'board',
  };
}
