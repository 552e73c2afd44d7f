import type { End, Piece } from '../boards/boardLayout.js';
import { LEAST_TIMBER } from '../joists/bearing.js';
import type { Frame } from '../joists/frame.js';
import { toGrid } from '../survey/grid.js';
import { corners, type Extent, extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import type { FixingSpacing } from './fixingSpacing.js';
import type { LineJob, PlacedTimber } from './lineJob.js';
import { type BoardEdge, type LinePoint, slant } from './timberUnder.js';

interface Side {
  readonly a: Point;
  readonly b: Point;
  /** Grid steps. */
  readonly distance: number;
}

/** A piece by its sides, grid steps. */
export interface PieceSides {
  readonly piece: Piece;
  /** Those of its outline and of the holes in it, on the plan, each with the distance that fixings keep from it. */
  readonly sides: readonly Side[];
  /** On the plan. */
  readonly about: Extent;
  /** In the frame of the joists: `left` and `right` across them. */
  readonly box: Extent;
}

/** The sides of a piece. Only its two long edges can be bound. */
export function pieceSides(piece: Piece, main: Frame, spacing: FixingSpacing): PieceSides {
  const outline = corners(piece.outline);
  const box = extentOf(
    outline.map((point) => {
      const { u, v } = main.into(point);
      return { x: u, y: v };
    }),
  );
  const [bound, cut] = [toGrid(spacing.boundEdgeDistance), toGrid(spacing.cutEdgeDistance)];
  const isBound = (from: number, to: number): boolean =>
    from === to && ((from === box.low && piece.edges.low === 'bound') || (from === box.high && piece.edges.high === 'bound'));
  const sides = [outline, ...(piece.holes ?? []).map(corners)].flatMap((ring) =>
    ring.map((a, i) => {
      const b = ring[(i + 1) % ring.length];
      return { a, b, distance: isBound(main.into(a).v, main.into(b).v) ? bound : cut };
    }),
  );
  return { piece, sides, about: extentOf(outline), box };
}

/** The sides of a piece as they lie over a timber: in its frame, with the timber that each of them needs. */
export function sidesOver({ piece, sides, box }: PieceSides, timber: PlacedTimber, main: Frame, job: LineJob): BoardEdge[] {
  const [cut, timberEdge] = [toGrid(job.spacing.cutEdgeDistance), toGrid(job.spacing.timberEdgeDistance)];
  const least = toGrid(LEAST_TIMBER);
  const carried = timber.frame.direction === main.direction && carries(piece, timber, box, job.wallGap);
  return sides.map(({ a: from, b: to, distance }) => {
    const [a, b] = [timber.frame.into(from), timber.frame.into(to)];
    const touches = carried && (isExtreme(a, box) || isExtreme(b, box));
    const isEnd = touches && (a.u === b.u || followsTimber(a, b, timber));
    const needs = isEnd ? least : a.u === b.u || a.v === b.v ? cut + timberEdge : Math.ceil(cut * slant({ a, b }) + timberEdge);
    return { a, b, distance, isEnd, needs };
  });
}

const isExtreme = ({ u }: LinePoint, { left, right }: Extent): boolean => u === left || u === right;

/**
 * Whether a slanting side is the end of a piece on a timber: all of it lies on the timber and follows it to within one in five. Where it
 * slants more, screws have room enough further along.
 */
function followsTimber(a: LinePoint, b: LinePoint, { centreAt, width }: PlacedTimber): boolean {
  const [besideA, besideB] = [a.u - centreAt(a.v), b.u - centreAt(b.v)];
  return Math.max(Math.abs(besideA), Math.abs(besideB)) <= width / 2 && 5 * Math.abs(besideA - besideB) <= Math.abs(a.v - b.v);
}

/** Whether a piece's end lies on a timber, or the timber's middle under the piece or in its gap to a wall. */
function carries({ ends }: Piece, timber: PlacedTimber, { left, right, low, high }: Extent, wallGap: number): boolean {
  if (ends.some(({ joist }) => joist === timber.joist.id)) return true;
  const reach = ({ meets }: End): number => (meets === 'wall' ? wallGap : 0);
  const centre = timber.centreAt(Math.round((low + high) / 2));
  return left - reach(ends[0]) <= centre && centre <= right + reach(ends[1]);
}
