import { extentOf } from '../survey/outline.js';
import { againstStanding, LEAST_LEFT } from './againstStanding.js';
import { beside } from './beside.js';
import { type CellEnd, cellsOf, cutOut, endsOf, type Group, joined, type Span } from './cellsOfRun.js';
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

/** Places across the joists at which timber lies under half of the piece's width, or for the length that counts. */
function supportsUnder({ rules }: PlacementProblem, { lines, spans }: About, piece: PossiblePiece): number {
  const { near, far, low, high } = piece.box as Box;
  const enough = Math.min((high - low) / 2, rules.supportLength);
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
