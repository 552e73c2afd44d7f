import type { End, Piece } from '../boards/boardLayout.js';
import { LEAST_TIMBER } from '../joists/bearing.js';
import type { Frame } from '../joists/frame.js';
import type { Finding } from '../rules/finding.js';
import { toGrid } from '../survey/grid.js';
import { corners, type Extent, extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import { endFindings, type Fixed } from './endFindings.js';
import type { FixingSpacing } from './fixingSpacing.js';
import type { LineJob, PlacedTimber } from './lineJob.js';
import type { FixingLine } from './placedFixings.js';
import { type SetOut, setOutLine } from './setOutLine.js';
import { type BoardEdge, type LinePoint, slant, timberUnder } from './timberUnder.js';

/** The screws of one piece, on every timber under it. */
export function fixPiece(
  piece: Piece,
  timbers: readonly PlacedTimber[],
  main: Frame,
  job: LineJob,
): { readonly lines: readonly SetOut[]; readonly findings: readonly Finding[] } {
  const sides = [piece.outline, ...(piece.holes ?? [])].flatMap((ring) => sidesOf(corners(ring), piece, main, job.spacing));
  const about = extentOf(corners(piece.outline));
  const near = timbers.filter((timber) => reaches(about, timber));
  const under = near.flatMap((timber) => {
    const edges = edgesOver(piece, timber, sides, main, job);
    return timberUnder(edges, timber, toGrid(LEAST_TIMBER)).map((run) => ({ timber, edges, run }));
  });
  const across = linesAcross(piece, under, main, job);
  return {
    lines: under.map(({ timber, edges, run }) => {
      const middle = Math.round((run.from + run.to) / 2);
      const lines = across.map((each) => each.centreAt(middle));
      const kind =
        timber.frame.direction === main.direction
          ? lineKind(piece, timber.centreAt(middle), lines)
          : timber.joist.kind === 'trimmer'
            ? 'end'
            : 'field';
      return setOutLine({ piece, timber, edges, run, kind }, job);
    }),
    findings: endFindings(piece, under, main, job),
  };
}

/**
 * The joists across which a piece lies: those of its butt joints, and those under half of its width or under it for as far as two screws
 * are apart. At a wall that slants, one that holds a corner only does not stand between the wall and the next.
 */
function linesAcross(piece: Piece, under: readonly Fixed[], main: Frame, { spacing }: LineJob): PlacedTimber[] {
  const levels = corners(piece.outline).map((point) => main.into(point).v);
  const enough = Math.min((Math.max(...levels) - Math.min(...levels)) / 2, toGrid(spacing.field));
  const lengths = new Map<PlacedTimber, number>();
  for (const { timber, run } of under) {
    if (timber.frame.direction === main.direction) lengths.set(timber, (lengths.get(timber) ?? 0) + run.to - run.from);
  }
  return [...lengths]
    .filter(([timber, length]) => length >= enough || piece.ends.some(({ joist }) => joist === timber.joist.id))
    .map(([timber]) => timber);
}

/** Whether a timber reaches a rectangle at all; grid steps. */
function reaches({ left, right, low, high }: Extent, timber: PlacedTimber): boolean {
  const [from, to] = [timber.frame.into({ x: left, y: low }), timber.frame.into({ x: right, y: high })];
  return from.u < timber.far && to.u > timber.near && from.v < timber.high && to.v > timber.low;
}

/** The sides of a piece as they lie over a timber: in its frame, with the timber that each of them needs. */
function edgesOver(piece: Piece, timber: PlacedTimber, sides: readonly Side[], main: Frame, job: LineJob): BoardEdge[] {
  const [cut, timberEdge] = [toGrid(job.spacing.cutEdgeDistance), toGrid(job.spacing.timberEdgeDistance)];
  const edges = sides.map(({ a, b, distance }) => ({ a: timber.frame.into(a), b: timber.frame.into(b), distance }));
  const ends = timber.frame.direction === main.direction && carries(piece, timber, edges, job.wallGap);
  const us = edges.map(({ a }) => a.u);
  const extremes = [Math.min(...us), Math.max(...us)];
  return edges.map((edge) => {
    const { a, b } = edge;
    const isEnd = ends && (a.u === b.u ? extremes.includes(a.u) : isRakedEnd(a, b, extremes, timber));
    const needs = isEnd ? toGrid(LEAST_TIMBER) : a.v === b.v ? cut + timberEdge : Math.ceil(cut * slant(edge) + timberEdge);
    return { ...edge, isEnd, needs };
  });
}

/**
 * Whether a slanting side is the end of a piece on a timber: all of it lies on the timber and follows it to within one in five. Where it
 * slants more, screws have room enough further along.
 */
function isRakedEnd(a: LinePoint, b: LinePoint, extremes: readonly number[], { centreAt, width }: PlacedTimber): boolean {
  const [besideA, besideB] = [a, b].map(({ u, v }) => u - centreAt(v));
  return (
    [a, b].some(({ u }) => extremes.includes(u)) &&
    Math.max(Math.abs(besideA), Math.abs(besideB)) <= width / 2 &&
    5 * Math.abs(besideA - besideB) <= Math.abs(a.v - b.v)
  );
}

/** Whether a piece's end lies on a timber, or the timber's middle under the piece or in its gap to a wall. */
function carries(piece: Piece, timber: PlacedTimber, edges: readonly Pick<BoardEdge, 'a'>[], wallGap: number): boolean {
  if (piece.ends.some(({ joist }) => joist === timber.joist.id)) return true;
  const points = edges.map(({ a }) => a);
  const [low, high] = piece.ends;
  const reach = ({ meets }: End): number => (meets === 'wall' ? wallGap : 0);
  const centre = timber.centreAt(Math.round((leastOf(points, 'v') + greatestIn(points, 'v')) / 2));
  return leastOf(points, 'u') - reach(low) <= centre && centre <= greatestIn(points, 'u') + reach(high);
}

const leastOf = (points: readonly LinePoint[], axis: 'u' | 'v'): number =>
  points.reduce((least, point) => Math.min(least, point[axis]), Infinity);
const greatestIn = (points: readonly LinePoint[], axis: 'u' | 'v'): number =>
  points.reduce((greatest, point) => Math.max(greatest, point[axis]), -Infinity);

interface Side {
  readonly a: Point;
  readonly b: Point;
  /** Grid steps. */
  readonly distance: number;
}

/** The sides of a ring, each with the distance that fixings keep from it. Only a piece's two long edges can be bound. */
function sidesOf(ring: readonly Point[], piece: Piece, main: Frame, spacing: FixingSpacing): Side[] {
  const levels = corners(piece.outline).map((point) => main.into(point).v);
  const [low, high] = [Math.min(...levels), Math.max(...levels)];
  return ring.map((a, i) => {
    const b = ring[(i + 1) % ring.length];
    const [from, to] = [main.into(a).v, main.into(b).v];
    const bound =
      from === to && ((from === low && piece.edges.low === 'bound') || (from === high && piece.edges.high === 'bound'));
    return { a, b, distance: toGrid(bound ? spacing.boundEdgeDistance : spacing.cutEdgeDistance) };
  });
}

/**
 * The first and the last line of a piece, of all that lie across it, are those of its ends: closer where it meets a board or an
 * opening, and along a wall. An end that runs past its last joist to a wall has its screws on that joist. A lone line serves both ends.
 */
function lineKind(piece: Piece, across: number, lines: readonly number[]): FixingLine['kind'] {
  const [low, high] = piece.ends.map(({ meets }): FixingLine['kind'] => (meets === 'wall' ? 'perimeter' : 'end'));
  const [isFirst, isLast] = [lines.every((each) => each >= across), lines.every((each) => each <= across)];
  if (isFirst && isLast) return low === 'end' ? low : high;
  return isFirst ? low : isLast ? high : 'field';
}
