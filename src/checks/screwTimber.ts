import { type Finding, finding, type Severity, type Where } from '../rules/finding.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { wrong } from './claimWrong.js';
import { distance } from './distance.js';
import type { FixingJob, Timber } from './fixingJob.js';
import type { FixingToCheck } from './fixingsToCheck.js';
import { HAIR } from './hair.js';
import { isNamed } from './isNamed.js';
import { geometry } from './place.js';
import type { GridPoint } from './solid.js';
import type { PieceShape } from './structure.js';

/** The timber that a screw is in, if any, and how far from its middle: positive towards greater coordinates. */
export interface ScrewTimber {
  readonly timber?: Timber;
  readonly offset?: number;
  readonly findings: readonly Finding[];
}

/** Where a screw is, for a finding about it. */
export const whereOf = ({ x, y, piece }: FixingToCheck, joist?: string): Where => ({
  ...(piece !== undefined && { piece }),
  ...(joist !== undefined && { joist }),
  at: { x, y },
});

export const wordsAt = ({ x, y }: FixingToCheck) => ({ place: `${Math.round(x)}, ${Math.round(y)}` });

/** The timber that a screw is in: the one it names if that is true, else any. */
export function screwTimber(fixing: FixingToCheck, job: FixingJob): ScrewTimber {
  const claimed = fixing.joist;
  const known = claimed === undefined || job.timbers.some(({ joist }) => isNamed(joist, claimed));
  const near = job.timbers
    .flatMap((timber) => {
      const offset = offsetFrom(timber, fixing);
      return offset === undefined ? [] : [{ timber, offset }];
    })
    .sort((a, b) => Math.abs(a.offset) - a.timber.half - Math.abs(b.offset) + b.timber.half);
  const inside = near.filter(({ timber, offset }) => Math.abs(offset) <= timber.half);
  const found = inside.find(({ timber }) => isNamed(timber.joist, claimed)) ?? inside[0];
  const what = `a screw at ${fixing.x}, ${fixing.y} in`;
  if (found === undefined) {
    const missed = near.find(({ timber }) => isNamed(timber.joist, claimed)) ?? near[0];
    const unknown = known ? [] : [wrong(what, claimed ?? null, 'no such joist', whereOf(fixing))];
    return { findings: [offTimber(fixing, missed, job), ...unknown] };
  }
  const { joist } = found.timber;
  const told =
    claimed === undefined || isNamed(joist, claimed) ? [] : [wrong(what, claimed, joist.id, whereOf(fixing, joist.id))];
  return { ...found, findings: told };
}

/** How far a screw is from the middle of a timber; nothing where it lies past the timber's ends. */
function offsetFrom({ frame, support }: Timber, { x, y }: FixingToCheck): number | undefined {
  const { u, v } = frame.into({ x: toGrid(x), y: toGrid(y) });
  return v < support.low || v > support.high ? undefined : u - support.centre(v);
}

function offTimber(
  fixing: FixingToCheck,
  missed: { readonly timber: Timber; readonly offset: number } | undefined,
  { rule }: FixingJob,
): Finding {
  const edge = rule('fixing.timberEdgeDistance');
  const source = edge?.rule.source ?? geometry;
  if (missed === undefined) {
    const where = whereOf(fixing, fixing.joist);
    return finding('fixing-off-timber', 'error', { where, source, sentence: 'screw-without-timber', words: wordsAt(fixing) });
  }
  const { timber, offset } = missed;
  return finding('fixing-off-timber', 'error', {
    where: whereOf(fixing, timber.joist.id),
    value: fromGrid(Math.abs(offset)),
    limit: fromGrid(Math.max(0, timber.half - (edge?.steps ?? 0))),
    unit: 'mm',
    source,
    sentence: 'screw-off-timber',
    words: wordsAt(fixing),
  });
}

/**
 * Whether a board end leaves too little of the timber for both edge distances at a place. A butt joint's bearing is said with the
 * layout; at a wall the joist may stand in it. The screws only follow.
 */
export function isNarrow(
  at: GridPoint,
  piece: PieceShape,
  timber: Timber | undefined,
  { ceiling, sides, rule }: FixingJob,
): boolean {
  const edge = rule('fixing.timberEdgeDistance');
  if (edge === undefined || timber === undefined || timber.frame.direction !== ceiling.frame.direction) return false;
  const offset = at.u - timber.support.centre(at.v);
  return sides[piece.index].some((side) => {
    const { from, to, isEnd, least } = side;
    if (!isEnd || at.v < Math.min(from.v, to.v) || at.v > Math.max(from.v, to.v)) return false;
    const out = from.u + to.u > 2 * at.u ? 1 : -1;
    return distance(at, side) + out * offset + timber.half < least.steps + edge.steps - HAIR;
  });
}

/** Joists side by side are each split by a screw too near the joint between them, as by one too near their other edges. */
export function nearTimberEdge(
  at: GridPoint,
  fixing: FixingToCheck,
  { timber, offset }: ScrewTimber,
  piece: PieceShape | undefined,
  job: FixingJob,
): Finding[] {
  const edge = job.rule('fixing.timberEdgeDistance');
  if (edge === undefined || timber === undefined || offset === undefined) return [];
  const toEdge = timber.half - Math.abs(offset);
  const toSeam = Math.min(...(timber.joist.seams ?? []).map((seam) => Math.abs(offset - toGrid(seam))));
  const away = Math.min(toEdge, toSeam);
  if (away >= edge.steps - HAIR) return [];
  const severity: Severity = piece && isNarrow(at, piece, timber, job) ? 'warning' : 'error';
  return [
    finding('fixing-edge', severity, {
      where: whereOf(fixing, timber.joist.id),
      value: fromGrid(away),
      limit: fromGrid(edge.steps),
      unit: 'mm',
      source: edge.rule.source,
      sentence: toSeam < toEdge ? 'screw-near-seam' : 'screw-near-timber-edge',
      words: wordsAt(fixing),
    }),
  ];
}
