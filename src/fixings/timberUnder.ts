import type { Stretch } from './fixingMarks.js';

/** A point along (`v`) and across (`u`) one timber, in grid steps. */
export interface LinePoint {
  readonly u: number;
  readonly v: number;
}

/** One side of a piece, or of a hole in it, in grid steps. */
export interface BoardEdge {
  readonly a: LinePoint;
  readonly b: LinePoint;
  /** How far fixings stay from it. */
  readonly distance: number;
  /** Whether it is the piece's own end, under which any timber is used that there is. */
  readonly isEnd: boolean;
  /** Timber that there must be on the board's side of it, across the timber, for the board to be fixed there. */
  readonly needs: number;
}

/** One timber in its own frame, in grid steps. */
export interface Timber {
  readonly centreAt: (v: number) => number;
  readonly low: number;
  readonly high: number;
  readonly width: number;
}

/** A stretch of timber under a piece between the same two sides of it. */
export interface Span extends Stretch {
  readonly near: BoardEdge;
  readonly far: BoardEdge;
}

/** Timber under a piece without a break. */
export interface Run extends Stretch {
  readonly spans: readonly Span[];
  /** How far board lies on the timber at all: further than it can be fixed where a side slants across the timber. */
  readonly low: number;
  readonly high: number;
}

/**
 * Where a timber lies under a piece, with as much of its width as each side of the piece needs. The piece is cut into bands at every
 * corner; within a band its sides are straight, so that what the timber has of it is found from straight lines only.
 */
export function timberUnder(edges: readonly BoardEdge[], timber: Timber, least: number): Run[] {
  const runs = runsUnder(edges, timber);
  const slanting = edges.some((edge) => slants(edge));
  const touched = slanting
    ? runsUnder(
        edges.map((edge) => (slants(edge) ? { ...edge, isEnd: true, needs: least } : edge)),
        timber,
      )
    : runs;
  return runs.map((run, i) => {
    const about = touched.find(({ from, to }) => from <= run.from && run.to <= to) ?? run;
    const alone = (other: Stretch | undefined): boolean =>
      other === undefined || other.to <= about.from || other.from >= about.to;
    return { ...run, low: alone(runs[i - 1]) ? about.from : run.from, high: alone(runs[i + 1]) ? about.to : run.to };
  });
}

/** Whether a side runs neither along the timber's direction nor across it. */
const slants = ({ a, b }: BoardEdge): boolean => a.u !== b.u && a.v !== b.v;

function runsUnder(edges: readonly BoardEdge[], timber: Timber): Omit<Run, 'low' | 'high'>[] {
  const levels = [...edges.flatMap(({ a, b }) => [a.v, b.v]), timber.low, timber.high]
    .filter((v) => v >= timber.low && v <= timber.high)
    .sort((p, q) => p - q);
  const runs: { from: number; to: number; spans: Span[] }[] = [];
  for (let i = 1; i < levels.length; i++) {
    const [from, to] = [levels[i - 1], levels[i]];
    if (from === to) continue;
    for (const [near, far] of sidesBetween(edges, from, to)) {
      const span = timbered({ from, to, near, far }, timber);
      if (span === undefined) continue;
      const before = runs.find((run) => run.to === span.from && joined(run.spans[run.spans.length - 1], span, timber));
      if (before === undefined) runs.push({ from: span.from, to: span.to, spans: [span] });
      else {
        before.to = span.to;
        before.spans.push(span);
      }
    }
  }
  return runs;
}

/** Where a side is at a distance along the timber. */
export const sideAt = ({ a, b }: BoardEdge, v: number): number =>
  a.u === b.u ? a.u : a.u + ((b.u - a.u) * (v - a.v)) / (b.v - a.v);

/** How much further a distance square to a slanting side is when measured straight across the timber. */
export const slant = ({ a, b }: Pick<BoardEdge, 'a' | 'b'>): number => {
  const slope = (b.u - a.u) / (b.v - a.v);
  return Math.sqrt(1 + slope * slope);
};

/** Pairs of sides that have board between them, all the way from one level to the next. */
function sidesBetween(edges: readonly BoardEdge[], from: number, to: number): (readonly [BoardEdge, BoardEdge])[] {
  const middle = (from + to) / 2;
  const crossed = edges
    .filter(({ a, b }) => Math.min(a.v, b.v) <= from && Math.max(a.v, b.v) >= to)
    .map((edge) => ({ edge, u: sideAt(edge, middle) }))
    .sort((p, q) => p.u - q.u);
  const pairs: (readonly [BoardEdge, BoardEdge])[] = [];
  for (let i = 0; i + 1 < crossed.length; i += 2) pairs.push([crossed[i].edge, crossed[i + 1].edge]);
  return pairs;
}

/** The part of a band where board and timber share enough. */
function timbered(band: Span, timber: Timber): Span | undefined {
  let { from, to } = band;
  const half = timber.width / 2;
  const { near, far } = band;
  // Beside a hole or a notch the strip must have room for both distances.
  const strip = near.isEnd && far.isEnd ? near.needs : near.distance * slant(near) + far.distance * slant(far);
  const spare = [
    (v: number) => sideAt(far, v) - sideAt(near, v) - strip,
    (v: number) => sideAt(far, v) - timber.centreAt(v) + half - far.needs,
    (v: number) => timber.centreAt(v) + half - sideAt(near, v) - near.needs,
  ];
  for (const width of spare) {
    const [start, end] = [width(band.from), width(band.to)];
    if (start < 0 && end < 0) return undefined;
    const level = band.from + ((band.to - band.from) * start) / (start - end);
    if (start < 0) from = Math.max(from, Math.ceil(level));
    if (end < 0) to = Math.min(to, Math.floor(level));
  }
  return from < to ? { ...band, from, to } : undefined;
}

/** Whether board runs over the timber from one band into the next. */
function joined(before: Span, after: Span, timber: Timber): boolean {
  const v = after.from;
  const half = timber.width / 2;
  const near = Math.max(sideAt(before.near, v), sideAt(after.near, v), timber.centreAt(v) - half);
  const far = Math.min(sideAt(before.far, v), sideAt(after.far, v), timber.centreAt(v) + half);
  return far - near >= Math.min(before.near.needs, before.far.needs, after.near.needs, after.far.needs);
}
