import type { Piece } from '../boards/boardLayout.js';
import { centreAt, directionOf, type Frame, frameOf } from '../joists/frame.js';
import { type Finding, finding, type Severity, type Where } from '../rules/finding.js';
import type { Conditions, RuleKey, RuleSet } from '../rules/ruleSet.js';
import { lookUp, numberOf, type RuleValue } from '../rules/ruleValue.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import { corners } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import type { Opening } from '../survey/room.js';
import { fixingMarks, type Stretch } from './fixingMarks.js';
import type { FixingSpacing } from './fixingSpacing.js';
import { lineText } from './lineText.js';
import type { FixingLine, FixingPosition, NoFixZone } from './placedFixings.js';
import { blockedBy, blockedByEdges, merged, type Obstacle, pathAt, type ScrewPath, screwPath } from './screwPath.js';
import type { BoardEdge, LinePoint, Run, Timber } from './timberUnder.js';

/** What every line of a job is set out by. */
export interface LineJob {
  readonly rules: RuleSet;
  readonly given: Conditions;
  readonly spacing: FixingSpacing;
  /** mm. */
  readonly floating: number;
  /** Widest gap to a wall, grid steps. */
  readonly wallGap: number;
  /** How far beside the middle of a joist screws go to keep off old lath nails, grid steps; 0 where there are none. */
  readonly offCentre: number;
  /** Nails in pairs, in the middle of the board; mm. */
  readonly pairs?: { readonly spacing: number; readonly distance: number };
  readonly openings: readonly Opening[];
  readonly noFix: readonly NoFixZone[];
}

/** A joist as a timber in the frame of its own direction. */
export interface PlacedTimber extends Timber {
  readonly joist: Joist;
  readonly frame: Frame;
  /** As far as its edges reach across its own direction, grid steps. */
  readonly near: number;
  readonly far: number;
}

export function placedTimber(joist: Joist): PlacedTimber {
  const frame = frameOf(directionOf([joist]));
  const [start, end] = [joist.start, joist.end].map((point) => frame.into({ x: toGrid(point.x), y: toGrid(point.y) }));
  const width = toGrid(joist.width);
  return {
    joist,
    frame,
    centreAt: (v) => centreAt(joist, frame, v),
    low: Math.min(start.v, end.v),
    high: Math.max(start.v, end.v),
    near: Math.min(start.u, end.u) - width / 2,
    far: Math.max(start.u, end.u) + width / 2,
    width,
  };
}

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
  const path = screwPath(run, timber, timberEdge, job.offCentre);
  const datum = edges.reduce((least, { a }) => Math.min(least, a.v), Infinity);
  const blocked = blockedStretches(path, edges, timber, job).map(({ from, to }) => ({ from: from - datum, to: to - datum }));
  const sharedEnd = piece.ends.findIndex((end) => end.meets === 'board' && end.joist === timber.joist.id);
  const pairs = kind === 'field' ? job.pairs : undefined;
  const { marks: firsts, tooWide } = fixingMarks({
    low: run.from - datum,
    high: run.to - datum,
    blocked,
    spacing: toGrid(pairs?.spacing ?? job.spacing[SPACINGS[kind]]),
    floating: toGrid(job.floating),
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
  const besideCentre = (mark: number): number => pathAt(path, mark + datum).u - timber.centreAt(mark + datum);
  const offCentre = marks.length === 0 ? 0 : fromGrid(besideCentre(marks[0]));
  return {
    ...(marks.length > 0 && {
      line: {
        ...lineOf(marks, firsts, { ...who, kind }, pairs?.distance),
        ...(job.offCentre !== 0 && kind === 'field' && { offCentre }),
      },
    }),
    shared: sharedEnd >= 0,
    levels: marks.map((mark) => mark + datum),
    positions: marks.map((mark) => ({ ...at(mark), ...who })),
    findings: [
      ...(path.tooNear ? [nearCutEnd(path.tooNear.distance, timber, { ...who, at: onPlan(path.tooNear.at) }, job)] : []),
      ...nearNailLine(marks.map(besideCentre), (index) => ({ ...who, at: at(marks[index]) }), job),
      ...tooWide.map((stretch) =>
        tooWideGap(stretch, kind, marks.length === 0, { ...who, at: at(Math.round((stretch.from + stretch.to) / 2)) }, job),
      ),
    ],
  };
}

/** Where on its line no screw may go: near the edges of the board, past the ends of the timber, in zones and openings. */
function blockedStretches(path: ScrewPath, edges: readonly BoardEdge[], timber: PlacedTimber, job: LineJob): Stretch[] {
  const obstacles = [
    ...job.noFix.map((zone) => obstacleOf(zone, timber, 0)),
    ...job.openings.map((opening) => obstacleOf(opening, timber, job.spacing.cutEdgeDistance)),
  ];
  return merged([
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
const SPACING_RULES = { end: 'fixing.boardEnd', perimeter: 'fixing.perimeter', field: 'fixing.field' } as const;

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

/** The screw stays on the timber, nearer the cut end than the rule; what to do about it can be done from below. */
const nearCutEnd = (distance: number, { joist }: PlacedTimber, where: Where, job: LineJob): Finding =>
  broken('fixing-edge', 'warning', 'fixing.cutEdgeDistance', fromGrid(Math.round(distance)), where, job, {
    sentence: sentenceFor(joist, job),
    words: { width: joist.width, tight: numberOf(job.rules, 'fixing.tightButtDistance') },
  });

/** Timber is narrow where even a joint over its middle has no room; two ends butted tight want some of it all the same. */
function sentenceFor({ width }: Joist, { rules, spacing }: LineJob): string {
  const needed =
    2 * (toGrid(spacing.cutEdgeDistance) + toGrid(spacing.timberEdgeDistance)) + toGrid(numberOf(rules, 'joint.gap'));
  if (toGrid(width) >= needed) return 'fixing-edge';
  return toGrid(width) >= toGrid(numberOf(rules, 'fixing.tightButtTimber')) ? 'narrow-timber' : 'too-narrow-timber';
}

/** Through lath and plaster: the screw nearest to the line of the old nails, where the timber has no room to keep off it. */
function nearNailLine(
  beside: readonly number[],
  where: (index: number) => Where,
  { rules, given, offCentre }: LineJob,
): Finding[] {
  if (offCentre === 0 || beside.length === 0) return [];
  const away = beside.map((each) => Math.abs(each));
  const nearest = away.indexOf(Math.min(...away));
  const { value, range, unit, source } = lookUp(rules, 'fixing.nailLineClearance', given) as RuleValue;
  const limit = range?.least ?? (value as number);
  // A place is moved to the grid, by up to half a step each way.
  if (away[nearest] >= toGrid(limit) - 1) return [];
  const details = { where: where(nearest), value: fromGrid(away[nearest]), limit, unit, source };
  return [finding('nail-line-near', 'warning', details)];
}

/** A stretch without screws that is longer than the rule allows, or a line on which none may be driven. */
function tooWideGap(stretch: Stretch, kind: FixingLine['kind'], whole: boolean, where: Where, job: LineJob): Finding {
  const value = fromGrid(stretch.to - stretch.from);
  const key = whole || value > job.spacing.field ? 'fixing.field' : SPACING_RULES[kind];
  const severity = job.rules.rules[key].level === 'should' ? 'warning' : 'error';
  return broken('fixing-gap', severity, key, value, where, job, whole ? { sentence: 'fixing-line-closed' } : {});
}

function broken(
  code: string,
  severity: Severity,
  key: RuleKey,
  value: number,
  where: Where,
  { rules, given }: LineJob,
  said: Pick<Parameters<typeof finding>[2] & object, 'sentence' | 'words'> = {},
): Finding {
  const rule = lookUp(rules, key, given) ?? lookUp(rules, key);
  if (rule === undefined || rule.value === null) throw new Error(`${key} has no number here`);
  return finding(code, severity, { where, value, limit: rule.value, unit: rule.unit, source: rule.source, ...said });
}
