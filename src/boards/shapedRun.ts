import { toGrid } from '../survey/grid.js';
import { extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import { sidesOf } from '../survey/traceRings.js';
import { againstStanding, LEAST_LEFT } from './againstStanding.js';
import { beside } from './beside.js';
import { isRaked, type JointLine, jointLine } from './jointLine.js';
import type { Ring } from './overlayRings.js';
import { partedAtNecks } from './partedAtNecks.js';
import type { Part } from './partsOf.js';
import type { PlacementProblem } from './placementProblem.js';
import { isBetween, isBeyondLast } from './plainRun.js';
import { type Box, isPossible, type Meets, type Place, type PossiblePiece, type Run } from './possiblePieces.js';
import type { Band } from './rowLayouts.js';
import { ringsOf, type Shape, shapesOf } from './shapesOf.js';
import { type DividingLine, giveOf, linesAround, placeOn } from './standingJoints.js';

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
interface CellEnd {
  readonly upright: number;
  readonly y: number;
}

type Span = readonly [from: number, to: number];

/** Cells that hang together: what one piece would be. */
interface Group extends Cell {
  readonly atLow: boolean;
}

/**
 * Where a run of any outline may be divided, and every piece that could lie in it. A joint may run wherever one joist lies under
 * all of it; what lies between two joints is one piece, or several where a wall or an opening parts it.
 */
export function shapedRun(problem: PlacementProblem, part: Part, band: Band, shape: Shape): Run {
  const rings = ringsOf(shape);
  const { left, right } = extentOf(shape.outline);
  const lines = part.joists.map((joist) => jointLine(problem.rules, joist, band));
  const spans = lines.map((line) => spansUnder(rings, line, band, left, right));
  const onJoists = linesIn(problem, lines, spans, band, rings, left, right);
  const inside = linesAround(problem, part, band, { from: left, to: right }, onJoists);
  const places: Place[] = [
    { at: left, low: left, high: left, joist: -1 },
    ...inside.map(placeOn),
    { at: right, low: right, high: right, joist: -1 },
  ];
  const cells = cellsOf(rings, inside, band);
  const pieces: PossiblePiece[] = [];
  const starting: number[][][] = places.map(() => []);
  const longest = Math.max(...problem.stocks.map(({ length }) => length)) + problem.rules.greatestExcess;
  for (let i = 0; i < cells.length; i++) {
    let groups = cells[i].map((cell): Group => ({ ...cell, atLow: i > 0 && cell.lowSide.length > 0 }));
    for (let k = i + 1; k <= cells.length; k++) {
      if (k > i + 1) groups = joined(groups, cells[k - 1]);
      if (groups.some(({ box }) => box.far - box.near > longest + problem.rules.jointGap)) break;
      const found = groups.map((group) => pieceOf(problem, { part, band, lines, spans, inside, places }, group, i, k));
      if (found.some((piece) => piece === undefined)) continue;
      starting[i].push(found.map((_, at) => pieces.length + at));
      pieces.push(...(found as PossiblePiece[]));
    }
  }
  const between = (from: number, to: number): Shape[] => shapesOf(cutOut(rings, inside[from - 1], inside[to - 1], band));
  return partedAtNecks(problem, { part, shape, inside, between }, { places, rings, pieces, starting });
}

/** What lies beyond one line and before another. */
function cutOut(
  rings: readonly Ring[],
  after: DividingLine | undefined,
  before: DividingLine | undefined,
  band: Band,
): readonly Ring[] {
  const beyond = after === undefined ? rings : beside(rings, ...turnedRound(endsOf(after, band))).rings;
  return before === undefined ? beyond : beside(beyond, ...endsOf(before, band)).rings;
}

const turnedRound = ([low, high]: readonly [Point, Point]): readonly [Point, Point] => [high, low];

/** The joists on which a joint may run: with timber all along it, and not meeting the one before. */
function linesIn(
  { rules }: PlacementProblem,
  lines: readonly JointLine[],
  spans: readonly (readonly Span[])[],
  band: Band,
  rings: readonly Ring[],
  near: number,
  far: number,
): JointLine[] {
  const slack = rules.wallGap.greatest;
  const hasTimber = (line: JointLine, k: number): boolean => {
    if (line.spare < 0 || !isBetween(line, near, far)) return false;
    const [from, to] = endsOf(line, band);
    const along = isRaked(line) ? beside(rings, from, to).along : spans[k];
    const isUnder = ([start, end]: Span): boolean => line.joist.low <= start + slack && line.joist.high >= end - slack;
    // A raked joint is made where the row is in one piece: its rake is that of the whole row.
    return along.length > 0 && along.every(isUnder) && (along.length === 1 || !isRaked(line));
  };
  return lines.filter(hasTimber).filter(isBeyondLast());
}

/** From the low edge of the row to the high one. */
const endsOf = ({ low, high }: Pick<DividingLine, 'low' | 'high'>, band: Band): readonly [Point, Point] => [
  { x: low, y: band.low },
  { x: high, y: band.high },
];

function cellsOf(rings: readonly Ring[], inside: readonly DividingLine[], band: Band): Cell[][] {
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
function joined(groups: readonly Group[], cells: readonly Cell[]): Group[] {
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

interface About {
  readonly part: Part;
  readonly band: Band;
  /** Of all joists of the part, and of those that it may be divided on. */
  readonly lines: readonly JointLine[];
  /** Per joist of the part, where it lies over the run. */
  readonly spans: readonly (readonly Span[])[];
  readonly inside: readonly DividingLine[];
  readonly places: readonly Place[];
}

/** What a group would be as a piece; nothing where the rules forbid it. */
function pieceOf(problem: PlacementProblem, about: About, group: Group, from: number, to: number): PossiblePiece | undefined {
  const { rules } = problem;
  const { part, band, inside, places } = about;
  const { box } = group;
  const atHigh = to < places.length - 1 && group.highSide.length > 0;
  const [low, high] = [group.atLow ? places[from] : undefined, atHigh ? places[to] : undefined];
  const lowMeets = low ? 'board' : meetsAt(part, box.near, group.near);
  const highMeets = high ? 'board' : meetsAt(part, box.far, group.far);
  const giveAt = (joint: DividingLine | undefined, meets: Meets, end: CellEnd): number => {
    if (joint !== undefined) return giveOf(problem, joint);
    return meets === 'wall' && end.upright === box.high - box.low ? rules.wallGive : 0;
  };
  const sides = [(high?.low ?? box.far) - (low?.low ?? box.near), (high?.high ?? box.far) - (low?.high ?? box.near)];
  const beside = band.width - (box.high - box.low);
  const piece: PossiblePiece = {
    from,
    to,
    lowMeets,
    highMeets,
    nominal: Math.min(Math.max(...sides), box.far - box.near),
    cut: box.far - box.near - ((Number(group.atLow) + Number(atHigh)) * rules.jointGap) / 2,
    give: giveAt(low && inside[from - 1], lowMeets, group.near) + giveAt(high && inside[to - 1], highMeets, group.far),
    // A strip beside it that is too narrow for any row is of no use to another piece.
    ...(beside >= Math.max(rules.rowWidth, 1) && { width: box.high - box.low }),
    box,
  };
  const against = againstStanding(
    part.standing,
    box,
    [low, high].some((joint) => joint !== undefined && joint.joist >= 0),
  );
  if (against === 'up') return { ...piece, isUp: true };
  if (against === 'blocked' || !meetsWhatStands(part, piece, low, high)) return undefined;
  return isPossible(problem, band, piece, supportsUnder(problem, about, piece)) ? piece : undefined;
}

/** Whether a piece that ends where one that is up does lies beside that one: elsewhere there need be no joist. */
function meetsWhatStands(
  { standing: { up } }: Part,
  { box }: PossiblePiece,
  low: Place | undefined,
  high: Place | undefined,
): boolean {
  const faces = (isThere: (piece: Box) => boolean): boolean =>
    up.some((piece) => isThere(piece) && piece.low < (box as Box).high && piece.high > (box as Box).low);
  const { near, far } = box as Box;
  return (
    (low?.standing === undefined || faces((piece) => Math.abs(piece.far - near) <= LEAST_LEFT)) &&
    (high?.standing === undefined || faces((piece) => Math.abs(piece.near - far) <= LEAST_LEFT))
  );
}

function meetsAt({ openings }: Part, x: number, { y }: CellEnd): 'wall' | 'opening' {
  const isIn = openings.some(({ near, far, low, high }) => near <= x && x <= far && low <= y && y <= high);
  return isIn ? 'opening' : 'wall';
}

/** Timber under a piece for this length takes two screws at the usual spacing, mm; common practice, no source. */
const LINE_OF_SCREWS = 250;

/** Places across the joists at which timber lies under half of the piece's width, or for the length of a line of screws. */
function supportsUnder({ rules }: PlacementProblem, { lines, spans }: About, piece: PossiblePiece): number {
  const { near, far, low, high } = piece.box as Box;
  const enough = Math.min((high - low) / 2, toGrid(LINE_OF_SCREWS));
  // A joist on the line of a wall carries what ends at the gap before it.
  const from = near - (piece.lowMeets === 'wall' ? rules.wallGap.nominal : 0);
  const to = far + (piece.highMeets === 'wall' ? rules.wallGap.nominal : 0);
  let count = 0;
  let covered = 0;
  let last: number | undefined;
  for (const [k, { joist, at }] of lines.entries()) {
    if (at < from || at > to) continue;
    if (at !== last) [covered, last] = [0, at];
    const before = covered;
    for (const span of spans[k]) {
      covered += Math.max(0, Math.min(joist.high, span[1], high) - Math.max(joist.low, span[0], low));
    }
    if (covered >= enough && before < enough) count++;
  }
  return count;
}

/** Where a joist lies over a run; beside its ends, what lies at the end. */
function spansUnder(rings: readonly Ring[], { at }: JointLine, band: Band, near: number, far: number): readonly Span[] {
  const place = Math.min(Math.max(at, near + 1), far);
  return beside(rings, { x: place, y: band.low }, { x: place, y: band.high }).along;
}
