import { type Finding, finding, type Severity } from '../rules/finding.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { wrong } from './claimWrong.js';
import { distance } from './distance.js';
import { type BoardSide, type FixingJob, isInside, type Timber } from './fixingJob.js';
import type { FixingToCheck } from './fixingsToCheck.js';
import { HAIR } from './hair.js';
import { geometry, placeOf } from './place.js';
import { isNarrow, whereOf, wordsAt } from './screwTimber.js';
import type { GridPoint } from './solid.js';
import type { PieceShape } from './structure.js';

/** Further outside a piece than this a screw is not one of the piece's own, mm. */
const ASTRAY = 50;

/** The piece that a screw is in, if any. */
export interface ScrewPiece {
  readonly piece?: PieceShape;
  readonly findings: readonly Finding[];
}

export function screwPiece(at: GridPoint, fixing: FixingToCheck, timber: Timber | undefined, job: FixingJob): ScrewPiece {
  const { ceiling, structure, sides } = job;
  const isIn = ({ index, facts: { box } }: PieceShape): boolean =>
    box.u0 <= at.u && at.u <= box.u1 && box.v0 <= at.v && at.v <= box.v1 && isInside(at, ceiling.pieces[index].rings);
  const named = structure.pieces.filter(({ facts }) => facts.id === fixing.piece);
  const piece = named.find(isIn) ?? structure.pieces.find(isIn);
  const what = `a screw at ${fixing.x}, ${fixing.y} in piece`;
  const claimed = fixing.piece ?? null;
  if (piece !== undefined && (named.length === 0 || named.includes(piece))) {
    const unknown = claimed === null ? [] : named.length > 0 ? [] : [wrong(what, claimed, piece.facts.id, whereOf(fixing))];
    return { piece, findings: [...unknown, ...nearEdges(at, fixing, piece, timber, job)] };
  }
  const beyond = (each: PieceShape): number => Math.min(...sides[each.index].map((side) => distance(at, side)));
  const near = (named.length > 0 ? named : structure.pieces).find((each) => beyond(each) <= toGrid(ASTRAY));
  if (near !== undefined) return { ...(piece && { piece }), findings: [pastEdge(at, fixing, near, job)] };
  if (piece !== undefined) return { piece, findings: [wrong(what, claimed, piece.facts.id, whereOf(fixing))] };
  const { words } = placeOf(ceiling.frame, at.u, at.v);
  return { findings: [finding('fixing-off-board', 'error', { where: whereOf(fixing, fixing.joist), source: geometry, words })] };
}

/** The side whose distance is missed by most. */
function nearEdges(
  at: GridPoint,
  fixing: FixingToCheck,
  piece: PieceShape,
  timber: Timber | undefined,
  job: FixingJob,
): Finding[] {
  const { side, away } = job.sides[piece.index]
    .map((each) => ({ side: each, away: distance(at, each) }))
    .reduce((worst, each) => (each.away - each.side.least.steps < worst.away - worst.side.least.steps ? each : worst));
  if (away >= side.least.steps - HAIR) return [];
  const narrow = side.isEnd && isNarrow(at, piece, timber, job);
  const unsure = side.enough !== undefined && away >= side.enough - HAIR;
  return [edgeFinding(fixing, piece, side, away, narrow || unsure ? 'warning' : 'error')];
}

function pastEdge(at: GridPoint, fixing: FixingToCheck, piece: PieceShape, { sides }: FixingJob): Finding {
  const { side, away } = sides[piece.index]
    .map((each) => ({ side: each, away: distance(at, each) }))
    .reduce((best, each) => (each.away < best.away ? each : best));
  return edgeFinding(fixing, piece, side, -away, 'error');
}

const edgeFinding = (fixing: FixingToCheck, piece: PieceShape, side: BoardSide, away: number, severity: Severity): Finding =>
  finding('fixing-edge', severity, {
    where: { ...whereOf(fixing, fixing.joist), piece: piece.facts.id },
    value: fromGrid(away),
    limit: fromGrid(side.least.steps),
    unit: 'mm',
    source: side.least.rule.source,
    sentence: away < 0 ? 'screw-past-edge' : 'screw-near-edge',
    words: { ...wordsAt(fixing), past: fromGrid(Math.abs(away)) },
  });
