import { LEAST_TIMBER } from '../joists/bearing.js';
import { toGrid } from '../survey/grid.js';
import { crossSections, type Side, type Span } from './crossSections.js';
import { type FixingJob, reframed, type Timber } from './fixingJob.js';
import { boxOf, type Solid } from './solid.js';
import type { PieceShape } from './structure.js';

/** A stretch along a timber, grid steps; whether each end of it is an edge of the board. */
export interface Run {
  readonly from: number;
  readonly to: number;
  readonly edgeAtFrom: boolean;
  readonly edgeAtTo: boolean;
}

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** A band of a piece, and where its sides are. */
interface Band {
  readonly low: number;
  readonly high: number;
  readonly leftLow: number;
  readonly leftHigh: number;
  readonly rightLow: number;
  readonly rightHigh: number;
}

/**
 * Where a timber lies under a piece with enough of its width to be screwed: what a joint's end needs at least where the timber
 * carries the piece and only the piece's own ends bound it; room for a screw with both its edge distances elsewhere, as beside
 * a hole, a notch, or a wall that slants across the timber. A stretch that goes on, too narrow for screws, does not end in an edge of
 * the board.
 */
export function runsUnder(piece: PieceShape, timber: Timber, carries: boolean, { ceiling, rule }: FixingJob): Run[] {
  const { support, frame } = timber;
  const cut = rule('fixing.cutEdgeDistance')?.steps ?? 0;
  const edge = rule('fixing.timberEdgeDistance')?.steps ?? 0;
  const least = toGrid(LEAST_TIMBER);
  const rings = ceiling.pieces[piece.index].rings.map((ring) => ring.map((point) => reframed(point, ceiling.frame, frame)));
  const solid: Solid = { kind: 'piece', index: piece.index, rings };
  const { u0, u1 } = boxOf(rings[0]);
  const neededAt = ({ left, right }: Span): Needed => {
    const [leftIsEnd, rightIsEnd] = [reaches(left, u0) && follows(left, timber), reaches(right, u1) && follows(right, timber)];
    const [pastLeft, pastRight] = [cut * slant(left), cut * slant(right)];
    return {
      strip: leftIsEnd && rightIsEnd ? least : Math.ceil(pastLeft + pastRight),
      left: carries && leftIsEnd ? least : Math.ceil(pastLeft + edge),
      right: carries && rightIsEnd ? least : Math.ceil(pastRight + edge),
    };
  };
  const bands = crossSections([solid]).flatMap(({ low, high, spans }) => {
    const stretch = { from: Math.max(low, support.low), to: Math.min(high, support.high) };
    return stretch.from < stretch.to ? spans.map((span) => ({ band: { low, high, ...span }, span, stretch })) : [];
  });
  const found = bands.flatMap(({ band, span, stretch }) => shared(band, stretch, timber, neededAt(span)) ?? []);
  const touched = bands.flatMap(
    ({ band, stretch }) => shared(band, stretch, timber, { strip: least, left: least, right: least }) ?? [],
  );
  // Whether board still lies on the timber just before, or just after, a place.
  const goesOn = (at: number, way: 1 | -1): boolean =>
    touched.some(({ from, to }) => (way === 1 ? from <= at && at < to : from < at && at <= to));
  return joined(found).map(({ from, to }) => ({ from, to, edgeAtFrom: !goesOn(from, -1), edgeAtTo: !goesOn(to, 1) }));
}

/**
 * Whether a side follows a timber, straight along it or at a rake: off a wall that slants across the timber a screw has room further
 * along, and is not to be nearer the cut side than its distance.
 */
function follows({ from, to }: Side, { support: { centre }, half }: Timber): boolean {
  if (from.u === to.u) return true;
  const [a, b] = [from.u - centre(from.v), to.u - centre(to.v)];
  return Math.max(Math.abs(a), Math.abs(b)) <= half && 5 * Math.abs(a - b) <= Math.abs(from.v - to.v);
}

/** How much further a distance square to a side is when measured straight across the timber. */
const slant = ({ from, to }: Pick<Side, 'from' | 'to'>): number => {
  const slope = (to.u - from.u) / (to.v - from.v);
  return Math.sqrt(1 + slope * slope);
};

const reaches = ({ from, to }: Side, end: number): boolean => from.u === end || to.u === end;

/** Stretches that follow on each other, as one. */
function joined(stretches: readonly Stretch[]): Stretch[] {
  const runs: { from: number; to: number }[] = [];
  for (const { from, to } of stretches) {
    const before = runs.find((run) => run.to === from);
    if (before) before.to = to;
    else runs.push({ from, to });
  }
  return runs;
}

/** How much of the board a screw needs: between its two sides, and from each of them onto the timber. */
interface Needed {
  readonly strip: number;
  readonly left: number;
  readonly right: number;
}

/** The part of a band in which board and timber share enough. */
function shared(band: Band, { from, to }: Stretch, { support: { centre }, half }: Timber, needed: Needed): Stretch | undefined {
  const at = (a: number, b: number, v: number): number => a + ((b - a) * (v - band.low)) / (band.high - band.low);
  const left = (v: number): number => at(band.leftLow, band.leftHigh, v);
  const right = (v: number): number => at(band.rightLow, band.rightHigh, v);
  const spare = [
    (v: number) => right(v) - left(v) - needed.strip,
    (v: number) => right(v) - centre(v) + half - needed.right,
    (v: number) => centre(v) + half - left(v) - needed.left,
  ];
  let [start, stop] = [from, to];
  for (const width of spare) {
    const [a, b] = [Math.round(width(from)), Math.round(width(to))];
    if (a < 0 && b < 0) return undefined;
    const turn = from + ((to - from) * a) / (a - b);
    if (a < 0) start = Math.max(start, Math.ceil(turn));
    if (b < 0) stop = Math.min(stop, Math.floor(turn));
  }
  return start < stop ? { from: start, to: stop } : undefined;
}
