import { extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import { sidesOf } from '../survey/traceRings.js';
import { beside } from './beside.js';
import type { Ring } from './overlayRings.js';
import type { Box } from './possiblePieces.js';
import type { Band } from './rowLayouts.js';
import { ringsOf, type Shape, shapesOf } from './shapesOf.js';
import type { DividingLine } from './standingJoints.js';

/** A part of a run between two places next to each other, in one piece. */
interface Cell {
  readonly box: Box;
  /** Stretches of the places that border it, along the row's width. */
  readonly lowSide: readonly Span[];
  readonly highSide: readonly Span[];
  readonly near: CellEnd;
  readonly far: CellEnd;
}

/** Where something is nearest or farthest: how much of that is square to the row, and its middle along the row's width. */
export interface CellEnd {
  readonly upright: number;
  readonly y: number;
}

export type Span = readonly [from: number, to: number];

/** Cells that hang together: what one piece would be. */
export interface Group extends Cell {
  readonly atLow: boolean;
}

/** What lies beyond one line and before another. */
export function cutOut(
  rings: readonly Ring[],
  after: DividingLine | undefined,
  before: DividingLine | undefined,
  band: Band,
): readonly Ring[] {
  const beyond = after === undefined ? rings : beside(rings, ...turnedRound(endsOf(after, band))).rings;
  return before === undefined ? beyond : beside(beyond, ...endsOf(before, band)).rings;
}

const turnedRound = ([low, high]: readonly [Point, Point]): readonly [Point, Point] => [high, low];

/** From the low edge of the row to the high one. */
export const endsOf = ({ low, high }: Pick<DividingLine, 'low' | 'high'>, band: Band): readonly [Point, Point] => [
  { x: low, y: band.low },
  { x: high, y: band.high },
];

export function cellsOf(rings: readonly Ring[], inside: readonly DividingLine[], band: Band): Cell[][] {
  let rest = rings;
  const cells: Cell[][] = [];
  inside.forEach((line, k) => {
    cells.push(cellsIn(cutOut(rest, undefined, line, band), inside[k - 1], line, band));
    rest = cutOut(rest, line, undefined, band);
  });
  return [...cells, cellsIn(rest, inside[inside.length - 1], undefined, band)];
}

function cellsIn(rings: readonly Ring[], before: DividingLine | undefined, after: DividingLine | undefined, band: Band): Cell[] {
  return shapesOf(rings).map((shape): Cell => {
    const { left, right, low, high } = extentOf(shape.outline);
    return {
      box: { near: left, far: right, low, high },
      lowSide: before === undefined ? [] : spansOn(shape, endsOf(before, band)),
      highSide: after === undefined ? [] : spansOn(shape, endsOf(after, band)),
      near: endAt(shape.outline, left),
      far: endAt(shape.outline, right),
    };
  });
}

/** Sides of a shape that lie on a line, to the rounding of crossings with it. */
function spansOn(shape: Shape, [a, b]: readonly [Point, Point]): Span[] {
  const reach = Math.abs(b.x - a.x) + Math.abs(b.y - a.y);
  const isOn = ({ x, y }: Point): boolean =>
    a.x === b.x ? x === a.x : Math.abs((b.x - a.x) * (y - a.y) - (x - a.x) * (b.y - a.y)) <= reach;
  return ringsOf(shape).flatMap((ring) =>
    sidesOf(ring).flatMap(([p, q]): Span[] =>
      isOn(p) && isOn(q) && p.y !== q.y ? [[Math.min(p.y, q.y), Math.max(p.y, q.y)]] : [],
    ),
  );
}

function endAt(ring: Ring, x: number): CellEnd {
  const { low, high } = extentOf(ring.filter((point) => point.x === x));
  const upright = sidesOf(ring).reduce((sum, [p, q]) => (p.x === x && q.x === x ? sum + Math.abs(q.y - p.y) : sum), 0);
  return { upright, y: (low + high) / 2 };
}

/** Groups with the cells beyond their far side: what meets on the place between them hangs together. */
export function joined(groups: readonly Group[], cells: readonly Cell[]): Group[] {
  if (groups.length === 1 && cells.length === 1) return [{ ...merged(groups[0], cells[0]), highSide: cells[0].highSide }];
  let all = groups.map((group) => ({ group, meeting: group.highSide, highSide: [] as readonly Span[] }));
  for (const cell of cells) {
    const met = all.filter(({ meeting }) => meeting.some((mine) => cell.lowSide.some((its) => overlap(mine, its) > 0)));
    const others = all.filter((each) => !met.includes(each));
    const one = met.reduce(
      (a, b) => ({
        group: merged(b.group, a.group),
        meeting: [...a.meeting, ...b.meeting],
        highSide: [...a.highSide, ...b.highSide],
      }),
      { group: { ...cell, atLow: false } as Group, meeting: [] as readonly Span[], highSide: cell.highSide },
    );
    all = [...others, { ...one, group: { ...one.group, atLow: met.some(({ group }) => group.atLow) } }];
  }
  return all.map(({ group, highSide }) => ({ ...group, highSide }));
}

const overlap = (a: Span, b: Span): number => Math.min(a[1], b[1]) - Math.max(a[0], b[0]);

/** A group with something more in it. */
function merged(a: Group, b: Cell): Group {
  const [p, q] = [a.box, b.box];
  return {
    box: {
      near: Math.min(p.near, q.near),
      far: Math.max(p.far, q.far),
      low: Math.min(p.low, q.low),
      high: Math.max(p.high, q.high),
    },
    lowSide: a.lowSide,
    highSide: a.highSide,
    near: furthest(a.near, b.near, q.near - p.near),
    far: furthest(a.far, b.far, p.far - q.far),
    atLow: a.atLow,
  };
}

/** The end of two groups together: that of the one which reaches further, or both. */
function furthest(a: CellEnd, b: CellEnd, lead: number): CellEnd {
  if (lead !== 0) return lead > 0 ? a : b;
  return { upright: a.upright + b.upright, y: a.y };
}
