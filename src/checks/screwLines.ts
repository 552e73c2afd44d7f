import { type Finding, finding, type Severity } from '../rules/finding.js';
import { fromGrid } from '../survey/grid.js';
import { type FixingJob, type FixingRule, reframed, type Timber } from './fixingJob.js';
import { HAIR } from './hair.js';
import { joistsUnder } from './joistsUnder.js';
import { placeOf } from './place.js';
import type { PlacedScrew } from './screwPlaces.js';
import { type Run, runsUnder } from './screwRuns.js';
import type { GridPoint, Ring } from './solid.js';
import type { PieceShape } from './structure.js';

/** Every line of screws that there should be: each piece along each timber that it lies on. */
export function screwLines(screws: readonly PlacedScrew[], closed: readonly (readonly Ring[])[], job: FixingJob): Finding[] {
  const lines = new Map<string, GridPoint[]>();
  for (const { at, timber, piece } of screws) {
    if (timber === undefined || piece === undefined) continue;
    const key = `${piece.index} ${timber.joist.id}`;
    const place = reframed(at, job.ceiling.frame, timber.frame);
    const line = lines.get(key);
    if (line) line.push(place);
    else lines.set(key, [place]);
  }
  return job.structure.pieces.flatMap((piece) => {
    const bearing = new Set(joistsUnder(piece, job.structure.supports, job.ceiling.rules).map(({ joist }) => joist.id));
    return job.timbers.flatMap((timber) => {
      const runs = runsUnder(piece, timber, bearing.has(timber.joist.id), job);
      const places = lines.get(`${piece.index} ${timber.joist.id}`) ?? [];
      return runs.flatMap((run) =>
        lineFindings(run, places, closed, { piece, timber, job, kind: kindOf(piece, timber, runs, job) }),
      );
    });
  });
}

type Kind = 'field' | 'end' | 'perimeter';

interface Line {
  readonly piece: PieceShape;
  readonly timber: Timber;
  readonly job: FixingJob;
  readonly kind: Kind;
}

/** The line next to a butt joint or an opening, next to a wall, or any other. */
function kindOf(piece: PieceShape, timber: Timber, runs: readonly Run[], { ceiling, structure }: FixingJob): Kind {
  if (timber.frame.direction !== ceiling.frame.direction) return timber.joist.kind === 'trimmer' ? 'end' : 'field';
  if (runs.length === 0) return 'field';
  const level = Math.round((runs[0].from + runs[0].to) / 2);
  const centre = timber.support.centre(level);
  const under = joistsUnder(piece, structure.supports, ceiling.rules).map((support) => support.centre(level));
  const ends = [
    ...(under.every((each) => each >= centre) ? [piece.low] : []),
    ...(under.every((each) => each <= centre) ? [piece.high] : []),
  ];
  if (ends.some(({ meets }) => meets === 'board' || meets === 'opening')) return 'end';
  return ends.some(({ meets }) => meets === 'wall') ? 'perimeter' : 'field';
}

const KEYS = { field: 'fixing.field', end: 'fixing.boardEnd', perimeter: 'fixing.perimeter' } as const;

function lineFindings(run: Run, places: readonly GridPoint[], closed: readonly (readonly Ring[])[], line: Line): Finding[] {
  const { job, timber } = line;
  const cut = job.rule('fixing.cutEdgeDistance')?.steps ?? 0;
  const field = job.rule('fixing.field');
  if (field === undefined || run.to - run.from < 2 * cut) return [];
  const marks = places
    .map(({ v }) => v)
    .filter((v) => run.from - HAIR <= v && v <= run.to + HAIR)
    .sort((a, b) => a - b);
  if (marks.length === 0) return [gapFinding(run.from, run.to, field, 'screw-line-missing', line)];
  const crossed = (from: number, to: number): boolean =>
    closed.some((rings) => meetsLine(rings, timber, from, to, job)) || besideHole(from, to, line);
  const edge = (from: number, to: number, isEdge: boolean): Finding[] => {
    const floating = job.rule('fixing.floatingEdgeDistance');
    // Where nothing may be fixed beside the edge the first screw stands further in, and the spacing judges.
    const limit = isEdge && floating !== undefined && !crossed(from, to) ? floating : field;
    return to - from > limit.steps + HAIR ? [gapFinding(from, to, limit, 'screw-first', line)] : [];
  };
  return [
    ...edge(run.from, marks[0], run.edgeAtFrom),
    ...marks.slice(1).flatMap((mark, i) => between(marks[i], mark, field, line)),
    ...edge(marks[marks.length - 1], run.to, run.edgeAtTo),
  ];
}

/** The spacing that must hold, and the closer one at ends and walls by its own level. */
function between(from: number, to: number, field: FixingRule, line: Line): Finding[] {
  const gap = to - from;
  if (gap > field.steps) return [gapFinding(from, to, field, 'screw-gap', line)];
  const closer = line.job.rule(KEYS[line.kind]);
  return closer !== undefined && gap > closer.steps ? [gapFinding(from, to, closer, 'screw-gap', line)] : [];
}

function gapFinding(
  from: number,
  to: number,
  { steps, rule }: FixingRule,
  sentence: string,
  { piece, timber, job }: Line,
): Finding {
  const level = Math.round((from + to) / 2);
  const { u, v } = reframed({ u: timber.support.centre(level), v: level }, timber.frame, job.ceiling.frame);
  const { at, words } = placeOf(job.ceiling.frame, u, v);
  const severity: Severity = rule.level === 'must' ? 'error' : 'warning';
  return finding('fixing-gap', severity, {
    where: { piece: piece.facts.id, joist: timber.joist.id, at },
    value: fromGrid(to - from),
    limit: fromGrid(steps),
    unit: 'mm',
    source: rule.source,
    sentence,
    words,
  });
}

/** Whether a closed zone reaches the timber within a stretch. */
function meetsLine(
  rings: readonly Ring[],
  { frame, support, half }: Timber,
  from: number,
  to: number,
  { ceiling }: FixingJob,
): boolean {
  return rings.some((ring) => {
    const places = ring.map((point) => reframed(point, ceiling.frame, frame));
    const [low, high] = [Math.min(...places.map(({ v }) => v)), Math.max(...places.map(({ v }) => v))];
    const [left, right] = [Math.min(...places.map(({ u }) => u)), Math.max(...places.map(({ u }) => u))];
    const centre = support.centre(Math.round((from + to) / 2));
    return low < to && high > from && left < centre + half && right > centre - half;
  });
}

/** Whether a hole in the piece lies over the timber within a stretch, or so near that screws keep clear of it. */
function besideHole(from: number, to: number, { piece, timber, job }: Line): boolean {
  const reach = job.rule('fixing.cutEdgeDistance')?.steps ?? 0;
  const wider = { ...timber, half: timber.half + reach };
  return job.ceiling.pieces[piece.index].rings.slice(1).some((ring) => meetsLine([ring], wider, from - reach, to + reach, job));
}
