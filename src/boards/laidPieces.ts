import { extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import { type Beside, beside } from './beside.js';
import { isRaked } from './jointLine.js';
import type { Laid } from './laid.js';
import type { Ring } from './overlayRings.js';
import { sizeFrom } from './pieceKinds.js';
import type { PlacementProblem } from './placementProblem.js';
import type { Box, Meets, Place, PossiblePiece, Run } from './possiblePieces.js';
import type { Band } from './rowLayouts.js';
import { type Shape, shapesOf } from './shapesOf.js';

/** One end of a piece as laid, in grid steps. */
export interface LaidEnd {
  readonly meets: Meets;
  /** The joint's centre line, or where the piece ends at a wall or an opening. */
  readonly position: number;
  /** At a butt joint: which of the problem's joists. */
  readonly joist?: number;
  /** How far the middle of the gap is from the middle of the joist, at worst across the row. */
  readonly offset: number;
  readonly gap: number;
  /** How many pieces it meets. */
  readonly joints: number;
  /** Where along the row's width it lies at the joint. */
  readonly along: readonly Span[];
}

export type Span = readonly [from: number, to: number];

/** A piece in its place, in the coordinates of its part and grid steps. */
export interface LaidPiece {
  /** Among the wanted. */
  readonly index: number;
  readonly row: number;
  readonly band: Band;
  readonly nominal: number;
  /** As cut. */
  readonly shape: Shape;
  readonly box: Box;
  readonly ends: readonly [low: LaidEnd, high: LaidEnd];
}

/** What both ends of a piece fall short by. */
type Shares = readonly [low: number, high: number];

/** Every piece in its place, a board that is a little short for its place standing in the middle of what it may take up. */
export function laidPieces(problem: PlacementProblem, laid: Laid): LaidPiece[] {
  const short = shortfalls(laid);
  const found: LaidPiece[] = [];
  laid.rows.forEach(({ band, runs }, row) => {
    runs.forEach((run, at) => {
      const pieces = laid.divisions[row].pieces[at].map((index) => run.pieces[index]);
      const start = found.length;
      const shares = pieces.map((piece, k) => shareOf(problem, piece, short[start + k]));
      pieces.forEach((piece, k) => {
        const { shape, along } = shapeOf(problem, band, run, piece, shares[k]);
        const { left, right, low, high } = extentOf(shape.outline);
        const box = { near: left, far: right, low, high };
        const facing = (side: 0 | 1) =>
          pieces.flatMap((other, m) =>
            (side === 0 ? other.to === piece.from : other.from === piece.to) && isBeside(other.box ?? band, piece.box ?? band)
              ? [shares[m][1 - side]]
              : [],
          );
        const ends = ([0, 1] as const).map((side) => ({
          ...endAt(problem, band, run, piece, box, side, shares[k][side], facing(side)),
          along: along[side],
        }));
        const [lowEnd, highEnd] = ends;
        found.push({ index: found.length, row, band, nominal: piece.nominal, shape, box, ends: [lowEnd, highEnd] });
      });
    });
  });
  return found;
}

const isBeside = (a: Pick<Box, 'low' | 'high'>, b: Pick<Box, 'low' | 'high'>): boolean => a.low < b.high && b.low < a.high;

/** Per wanted piece, how much shorter it is than its place. */
function shortfalls({ wanted, boards }: Laid): number[] {
  const short = wanted.map(() => 0);
  for (const { stock, whole, strips } of boards) {
    for (const index of [...whole, ...strips.flatMap(({ pieces }) => pieces)]) {
      short[index] = wanted[index].piece.cut - sizeFrom(stock, wanted[index].piece);
    }
  }
  return short;
}

/** How a shortfall is shared between the two ends: a wall takes what it may, then the butt joint; like ends share alike. */
function shareOf({ rules }: PlacementProblem, { lowMeets, highMeets }: PossiblePiece, short: number): Shares {
  if (lowMeets === highMeets) return [Math.floor(short / 2), Math.ceil(short / 2)];
  if (lowMeets === 'opening') return [0, short];
  if (highMeets === 'opening') return [short, 0];
  const wall = Math.min(short, rules.wallGive);
  return lowMeets === 'wall' ? [wall, short - wall] : [short - wall, wall];
}

/** A piece as cut: what of its run lies between its two ends. */
function shapeOf({ rules }: PlacementProblem, band: Band, run: Run, piece: PossiblePiece, [low, high]: Shares): ShapeCut {
  const half = rules.jointGap / 2;
  const nearEnd = endLine(
    run.places[piece.from],
    piece.lowMeets,
    half + low,
    (piece.box?.near ?? run.places[piece.from].at) + low,
  );
  const farEnd = endLine(run.places[piece.to], piece.highMeets, -half - high, (piece.box?.far ?? run.places[piece.to].at) - high);
  if (run.rings === undefined) {
    const outline = [
      { x: nearEnd.low, y: band.low },
      { x: farEnd.low, y: band.low },
      { x: farEnd.high, y: band.high },
      { x: nearEnd.high, y: band.high },
    ];
    const across = [[band.low, band.high]] as const;
    return { shape: { outline, holes: [] }, along: [across, across] };
  }
  const after = cutAt(run.rings, nearEnd, band, true);
  const between = cutAt(after.rings, farEnd, band, false);
  const shape = nearestTo(piece.box as Box, shapesOf(between.rings));
  const { low: from, high: to } = extentOf(shape.outline);
  const own = (spans: readonly Span[]): Span[] => spans.filter(([start, end]) => start < to && end > from);
  return { shape, along: [own(after.along.map(([start, end]): Span => [-end, -start])), own(between.along)] };
}

/** A piece as cut, and where its near and its far end lie along the row's width. */
interface ShapeCut {
  readonly shape: Shape;
  readonly along: readonly [near: readonly Span[], far: readonly Span[]];
}

interface EndLine {
  readonly low: number;
  readonly high: number;
}

function endLine(place: Place, meets: Meets, moved: number, square: number): EndLine {
  return meets === 'board' ? { low: place.low + moved, high: place.high + moved } : { low: square, high: square };
}

function cutAt(rings: readonly Ring[], { low, high }: EndLine, band: Band, beyond: boolean): Beside {
  const ends: readonly [Point, Point] = [
    { x: low, y: band.low },
    { x: high, y: band.high },
  ];
  return beyond ? beside(rings, ends[1], ends[0]) : beside(rings, ends[0], ends[1]);
}

/** Of the pieces that lie between the same two ends, the one whose place this is. */
function nearestTo(box: Box, shapes: readonly Shape[]): Shape {
  const away = ({ outline }: Shape): number => {
    const { left, right, low, high } = extentOf(outline);
    return Math.abs(left - box.near) + Math.abs(right - box.far) + Math.abs(low - box.low) + Math.abs(high - box.high);
  };
  return shapes.reduce((best, shape) => (away(shape) < away(best) ? shape : best));
}

function endAt(
  problem: PlacementProblem,
  band: Band,
  run: Run,
  piece: PossiblePiece,
  { near, far }: Box,
  side: 0 | 1,
  own: number,
  facing: readonly number[],
): Omit<LaidEnd, 'along'> {
  const [meets, place, position] =
    side === 0 ? [piece.lowMeets, run.places[piece.from], near] : [piece.highMeets, run.places[piece.to], far];
  if (meets !== 'board') return { meets, position, offset: 0, gap: 0, joints: 0 };
  const across = Math.max(0, ...facing);
  const off = (side === 0 ? own - across : across - own) / 2;
  return {
    meets,
    position: place.at,
    joist: place.joist,
    offset: Math.round(Math.max(...strayed(problem, place, band).map((away) => Math.abs(away + off)))),
    gap: problem.rules.jointGap + own + across,
    joints: facing.length,
  };
}

/** How far a joint is from the middle of its joist at the two edges of the row. */
function strayed({ joists }: PlacementProblem, place: Place, band: Band): number[] {
  if (isRaked(place)) return [0];
  const { centre } = joists[place.joist];
  return [place.at - centre(band.low), place.at - centre(band.high)];
}
