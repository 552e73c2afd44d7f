import type { Piece } from '../boards/boardLayout.js';
import type { Finding } from '../rules/finding.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { corners } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import type { Opening } from '../survey/room.js';
import { besideCentre } from './besideCentre.js';
import { fixingMarks, type Stretch } from './fixingMarks.js';
import { nearCutEnd, nearNailLine, tooWideGap } from './lineFindings.js';
import type { LineJob, PlacedTimber } from './lineJob.js';
import { lineText } from './lineText.js';
import type { FixingLine, FixingPosition, NoFixZone } from './placedFixings.js';
import { blockedBy, blockedByEdges, merged, type Obstacle, pathAt, type ScrewPath, screwPath } from './screwPath.js';
import type { BoardEdge, LinePoint, Run, Timber } from './timberUnder.js';

/** One line of screws, set out. */
export interface SetOut {
  /** Absent where no screw could be placed. */
  readonly line?: FixingLine;
  /** Whether the board of a butt joint is fixed to the same joist. */
  readonly shared: boolean;
  /** Places along the joist, grid steps. */
  readonly levels: readonly number[];
  readonly positions: readonly FixingPosition[];
  readonly findings: readonly Finding[];
}

interface LineToSetOut {
  readonly piece: Piece;
  readonly timber: PlacedTimber;
  readonly edges: readonly BoardEdge[];
  readonly run: Run;
  readonly kind: FixingLine['kind'];
}

/** Sets out the screws of one piece along one timber. */
export function setOutLine({ piece, timber, edges, run, kind }: LineToSetOut, job: LineJob): SetOut {
  const timberEdge = toGrid(job.spacing.timberEdgeDistance);
  const floating = toGrid(job.floating);
  // Where a side slants across the timber the first screw is measured from the edge of the board, not from where one can go.
  const reach = { from: Math.max(run.low, run.from - floating), to: Math.min(run.high, run.to + floating) };
  const path = screwPath(run, timber, timberEdge, besideCentre(timber.joist, job.offCentre));
  const datum = edges.reduce((least, { a }) => Math.min(least, a.v), Infinity);
  const blocked = blockedStretches(run, reach, path, edges, timber, job).map(({ from, to }) => ({
    from: from - datum,
    to: to - datum,
  }));
  const sharedEnd = piece.ends.findIndex((end) => end.meets === 'board' && end.joist === timber.joist.id);
  const pairs = kind === 'field' ? job.pairs : undefined;
  const { marks: firsts, tooWide } = fixingMarks({
    low: reach.from - datum,
    high: reach.to - datum,
    blocked,
    spacing: toGrid(pairs?.spacing ?? job.spacing[SPACINGS[kind]]),
    floating,
    // The two lines at a butt joint lean opposite ways.
    lean: sharedEnd < 0 ? 0 : sharedEnd === 0 ? -1 : 1,
  });
  const marks = pairs === undefined ? firsts : withSeconds(firsts, toGrid(pairs.distance), blocked);
  const onPlan = ({ u, v }: LinePoint): Point => {
    const { x, y } = timber.frame.back(u, v);
    return { x: fromGrid(x), y: fromGrid(y) };
  };
  const who = { piece: piece.id, joist: timber.joist.id };
  const at = (mark: number): Point => onPlan(pathAt(path, mark + datum));
  const beside = (mark: number): number => pathAt(path, mark + datum).u - timber.centreAt(mark + datum);
  const offCentre = marks.length === 0 ? 0 : fromGrid(beside(marks[0]));
  return {
    ...(marks.length > 0 && {
      line: {
        ...lineOf(marks, firsts, { ...who, kind }, pairs?.distance),
        ...((job.offCentre !== 0 || timber.joist.seams !== undefined) && kind === 'field' && { offCentre }),
      },
    }),
    shared: sharedEnd >= 0,
    levels: marks.map((mark) => mark + datum),
    positions: marks.map((mark) => ({ ...at(mark), ...who })),
    findings: [
      ...(path.tooNear
        ? [nearCutEnd(path.tooNear.distance, timber, sharedEnd >= 0, { ...who, at: onPlan(path.tooNear.at) }, job)]
        : []),
      ...nearNailLine(marks.map(beside), (index) => ({ ...who, at: at(marks[index]) }), job),
      ...tooWide.map((stretch) =>
        tooWideGap(stretch, kind, marks.length === 0, { ...who, at: at(Math.round((stretch.from + stretch.to) / 2)) }, job),
      ),
    ],
  };
}

/** Where on its line no screw may go: near the edges of the board, past the ends of the timber, in zones and openings. */
function blockedStretches(
  run: Run,
  reach: Stretch,
  path: ScrewPath,
  edges: readonly BoardEdge[],
  timber: PlacedTimber,
  job: LineJob,
): Stretch[] {
  const obstacles = [
    ...job.noFix.map((zone) => obstacleOf(zone, timber, 0)),
    ...job.openings.map((opening) => obstacleOf(opening, timber, job.spacing.cutEdgeDistance)),
  ];
  return merged([
    ...(reach.from < run.from ? [{ from: reach.from - 1, to: run.from }] : []),
    ...(reach.to > run.to ? [{ from: run.to, to: reach.to + 1 }] : []),
    ...blockedByEdges(path, edges),
    ...timberEnds(timber, toGrid(job.spacing.timberEdgeDistance)),
    ...obstacles.flatMap((obstacle) => blockedBy(path, obstacle)),
  ]);
}

/** A second nail beside each, towards the middle of the line, where one may go. */
function withSeconds(firsts: readonly number[], distance: number, blocked: readonly Stretch[]): number[] {
  const middle = firsts.length === 0 ? 0 : (firsts[0] + firsts[firsts.length - 1]) / 2;
  const free = (mark: number): boolean => blocked.every(({ from, to }) => mark <= from || mark >= to);
  return firsts
    .flatMap((first) => {
      const [wanted, other] = first <= middle ? [first + distance, first - distance] : [first - distance, first + distance];
      const second = free(wanted) ? wanted : free(other) ? other : undefined;
      return second === undefined ? [first] : [first, second];
    })
    .sort((a, b) => a - b);
}

const SPACINGS = { end: 'boardEnd', perimeter: 'perimeter', field: 'field' } as const;

/** The two ends of a timber that stops under a piece. */
const timberEnds = ({ low, high }: Timber, distance: number): Stretch[] =>
  [low, high].map((end) => ({ from: end - distance, to: end + distance }));

function obstacleOf(zone: NoFixZone | Opening, timber: PlacedTimber, margin: number): Obstacle {
  if ('outline' in zone) {
    const ring = corners(zone.outline).map((point) => timber.frame.into(point));
    return { sides: ring.map((a, i) => [a, ring[(i + 1) % ring.length]] as const), closed: true, margin: toGrid(margin) };
  }
  const centre = timber.frame.into({ x: toGrid(zone.centre.x), y: toGrid(zone.centre.y) });
  return { sides: [[centre, centre]], closed: false, margin: toGrid(zone.diameter / 2 + margin) };
}

function lineOf(
  marks: readonly number[],
  firsts: readonly number[],
  about: Pick<FixingLine, 'piece' | 'joist' | 'kind'>,
  pairDistance: number | undefined,
): FixingLine {
  const stepsOf = (each: readonly number[]): number[] => each.slice(1).map((mark, i) => fromGrid(mark - each[i]));
  const text = lineText(fromGrid(firsts[0]), stepsOf(firsts));
  return {
    ...about,
    count: marks.length,
    first: fromGrid(marks[0]),
    steps: stepsOf(marks),
    text: pairDistance === undefined ? text : `${text}, each with a second ${pairDistance} towards the middle`,
    ...(pairDistance !== undefined && { pairDistance }),
  };
}
