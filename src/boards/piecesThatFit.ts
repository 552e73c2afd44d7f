import { isKept } from './againstStanding.js';
import type { Piece } from './boardLayout.js';
import { placementProblem } from './placementProblem.js';
import { boxIn } from './possiblePieces.js';
import { rowSets } from './rowSets.js';
import { keptPiece, type LayingRequest } from './standing.js';

/** Those of some pieces that could still be laid where they are, each by itself. */
export function piecesThatFit(request: LayingRequest, pieces: readonly Piece[]): Piece[] {
  const problem = placementProblem(request);
  const rows = rowSets(problem).flatMap((set) => set.rows);
  return pieces.filter((piece) => {
    const part = problem.parts.findIndex(({ zone }) => zone === piece.zone);
    if (part < 0) return false;
    const kept = keptPiece(piece, problem.parts[part].into);
    return rows.some(
      ({ band, graph, runs }) =>
        band.part === part &&
        graph.piece.some((each, arc) => each !== undefined && isKept(kept, boxIn(runs[graph.run[arc]], band, each))),
    );
  });
}
