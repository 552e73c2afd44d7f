import type { Finding } from '../rules/finding.js';
import { toGrid } from '../survey/grid.js';
import type { FixingJob, Timber } from './fixingJob.js';
import type { FixingToCheck } from './fixingsToCheck.js';
import { screwPiece } from './screwPiece.js';
import { nearTimberEdge, screwTimber } from './screwTimber.js';
import type { GridPoint } from './solid.js';
import type { PieceShape } from './structure.js';

/** A screw with the timber and the piece that it is really in. */
export interface PlacedScrew {
  readonly at: GridPoint;
  readonly timber?: Timber;
  readonly piece?: PieceShape;
  readonly findings: readonly Finding[];
}

export function placedScrew(fixing: FixingToCheck, job: FixingJob): PlacedScrew {
  const at = job.ceiling.frame.into({ x: toGrid(fixing.x), y: toGrid(fixing.y) });
  const inTimber = screwTimber(fixing, job);
  const inPiece = screwPiece(at, fixing, inTimber.timber, job);
  return {
    at,
    ...(inTimber.timber && { timber: inTimber.timber }),
    ...(inPiece.piece && { piece: inPiece.piece }),
    findings: [...inTimber.findings, ...inPiece.findings, ...nearTimberEdge(at, fixing, inTimber, inPiece.piece, job)],
  };
}
