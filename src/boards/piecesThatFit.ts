import type { Piece } from './boardLayout.js';
import { placementProblem } from './placementProblem.js';
import { rowSets } from './rowSets.js';
import { type LayingRequest, nominalStretch } from './standing.js';

/** Those of some pieces that could still be laid where they are, each by itself. */
export function piecesThatFit(request: LayingRequest, pieces: readonly Piece[]): Piece[] {
  const problem = placementProblem(request);
  const rows = rowSets(problem).flatMap((set) => set.rows);
  return pieces.filter((piece) => {
    const { near, far, low, high } = nominalStretch(piece, problem.into);
    return rows.some(
      ({ band, graph }) =>
        band.low === low &&
        band.high === high &&
        graph.piece.some((each, arc) => {
          const places = graph.runs[graph.run[arc]]?.places;
          return each !== undefined && places !== undefined && places[each.from] === near && places[each.to] === far;
        }),
    );
  });
}
