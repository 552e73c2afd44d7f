import { type Ceiling, gridRule, type PieceFacts, perimeterGap } from './ceiling.js';
import { type Facing, facingsOf } from './facings.js';
import { HAIR } from './hair.js';
import { type Joint, jointsOf, stretchesOf } from './joints.js';
import { type RowShape, rowsOf } from './rowShapes.js';
import { crossingOf, type EndLine, type EndPart, type Seat, type Support, seatOf, supportsOf } from './supports.js';
import type { Views } from './views.js';

/** What the outlines say about rows, ends and joints: everything a bare layout leaves out. Grid steps, in the frame. */
export interface Structure {
  readonly pieces: readonly PieceShape[];
  readonly rows: readonly RowShape[];
  /** Butt joints. */
  readonly endJoints: readonly EndJoint[];
  /** Joints between long edges; `first` is the lower piece. */
  readonly edgeJoints: readonly Joint[];
  readonly supports: readonly Support[];
  /** Timbers that run the other way, in the frame turned. */
  readonly crossing: readonly Support[];
  readonly endFacings: readonly Facing[];
  readonly edgeFacings: readonly Facing[];
}

export interface PieceShape {
  readonly index: number;
  readonly facts: PieceFacts;
  readonly row: number;
  readonly low: EndShape;
  readonly high: EndShape;
  /** Nominal: from one end's position to the other's. */
  readonly length: number;
  /** The piece from its foot to its head, and how far timber counts for it on either side. */
  readonly bands: readonly Band[];
}

/** A level band of a piece: to the far side of a joint's gap, to the wall or to the opening; at its foot and its head. */
export interface Band {
  readonly low: number;
  readonly high: number;
  readonly fromLow: number;
  readonly fromHigh: number;
  readonly toLow: number;
  readonly toHigh: number;
}

export interface EndShape {
  readonly meets: 'board' | 'wall' | 'opening' | 'nothing';
  /** Centre line of the joint, or the end of the piece. */
  readonly position: number;
  /** The longest joint of this end. */
  readonly joint?: EndJoint;
  /** Everything that a part of this end meets. */
  readonly facings: readonly Facing[];
  /** Of an end that meets nothing. */
  readonly loose?: SeatedLine;
}

export interface EndJoint extends Joint {
  /** Stretch by stretch, from low to high: an opening parts a joint, and each part may lie on a joist of its own. */
  readonly stretches: readonly SeatedLine[];
  /** Centre line at the foot and the head: the joist's where it lies in the gap, else the middle of the gap. */
  readonly atLow: number;
  readonly atHigh: number;
  readonly position: number;
}

/** A board end, or a stretch of one, and the timber that serves it best; none where there is none. */
export interface SeatedLine extends EndLine {
  readonly seat?: Seat;
}

type SeatOf = (line: EndLine) => Seat | undefined;

export function structureOf(
  ceiling: Ceiling,
  { across, along }: Views,
  rows: readonly RowShape[] = rowsOf(ceiling.about.map(({ box }) => box)),
): Structure {
  const endFacings = facingsOf(across);
  const edgeFacings = facingsOf(along);
  const supports = supportsOf(ceiling.joists, ceiling.frame);
  const crossing = crossingOf(ceiling.joists, ceiling.frame);
  const slack = perimeterGap(ceiling.rules).greatest;
  const seat: SeatOf = (line) => seatOf(line, supports, crossing, slack, ceiling.rules);
  const endJoints = jointsOf(endFacings, slack).map((joint) => seated(joint, seat));
  const bySide = groupedBySide(endFacings);
  const halfGap = gridRule(ceiling.rules, 'joint.gap').steps / 2;
  const pieces = ceiling.about.map((facts, index): PieceShape => {
    const facings = (side: Facing['side']): readonly Facing[] => bySide.get(`${index} ${side}`) ?? [];
    const end = (side: Facing['side']): EndShape => {
      const joints = endJoints.filter((each) => (side === 'low' ? each.second : each.first) === index);
      return endShape(facts, side, facings(side), longest(joints), halfGap, seat);
    };
    const [low, high] = [end('low'), end('high')];
    const row = rows.find((each) => each.pieces.includes(index))?.row ?? 0;
    const bands = bandsOf(facings('low'), facings('high'), halfGap);
    return { index, facts, row, low, high, length: high.position - low.position, bands };
  });
  return { pieces, rows, endJoints, edgeJoints: jointsOf(edgeFacings), supports, crossing, endFacings, edgeFacings };
}

const longest = (joints: readonly EndJoint[]): EndJoint | undefined =>
  joints.reduce<EndJoint | undefined>((best, each) => (best === undefined || each.length > best.length ? each : best), undefined);

function seated(joint: Joint, seat: SeatOf): EndJoint {
  const stretches = linesOf(joint).map((line): SeatedLine => {
    const found = seat(line);
    return found ? { ...line, seat: found } : line;
  });
  const [foot, head] = [stretches[0], stretches[stretches.length - 1]];
  const centre = ({ seat: found }: SeatedLine, v: number, first: number, second: number): number => {
    const at = found?.support.centre(v) ?? Infinity;
    return first - HAIR <= at && at <= second + HAIR ? at : Math.round((first + second) / 2);
  };
  const atLow = centre(foot, joint.low, joint.firstLow, joint.secondLow);
  const atHigh = centre(head, joint.high, joint.firstHigh, joint.secondHigh);
  return { ...joint, stretches, atLow, atHigh, position: Math.round((atLow + atHigh) / 2) };
}

/** A joint as it lies on its timber: in as many stretches as openings and the tips of walls leave of it. */
const linesOf = (joint: Joint): EndLine[] =>
  stretchesOf(partsOf(joint)).map((parts) => {
    const [foot, head] = [parts[0], parts[parts.length - 1]];
    return { low: foot.low, high: head.high, atLow: foot.atLow, atHigh: head.atHigh, gap: joint.gap, parts };
  });

/** The middle of the gap, stretch by stretch; those that follow on each other straight up as one. */
function partsOf({ parts }: Joint): EndPart[] {
  const lines: { low: number; high: number; atLow: number; atHigh: number }[] = [];
  for (const { low, high, ownLow, ownHigh, otherLow, otherHigh } of parts) {
    const [atLow, atHigh] = [(ownLow + otherLow) / 2, (ownHigh + otherHigh) / 2];
    const before = lines[lines.length - 1];
    if (before?.high === low && before.atLow === atLow && before.atHigh === atLow && atHigh === atLow) before.high = high;
    else lines.push({ low, high, atLow, atHigh });
  }
  return lines;
}

function groupedBySide(facings: readonly Facing[]): Map<string, Facing[]> {
  const groups = new Map<string, Facing[]>();
  for (const facing of facings) {
    const key = `${facing.piece} ${facing.side}`;
    const group = groups.get(key);
    if (group) group.push(facing);
    else groups.set(key, [facing]);
  }
  return groups;
}

/** Bands that follow on each other straight up are one. */
function bandsOf(lefts: readonly Facing[], rights: readonly Facing[], halfGap: number): Band[] {
  const bands: { low: number; high: number; fromLow: number; fromHigh: number; toLow: number; toHigh: number }[] = [];
  lefts.forEach((left, i) => {
    const { low, high } = left;
    const right = rights[i];
    const [fromLow, fromHigh] = [reachOf(left, -1, 'Low', halfGap), reachOf(left, -1, 'High', halfGap)];
    const [toLow, toHigh] = [reachOf(right, 1, 'Low', halfGap), reachOf(right, 1, 'High', halfGap)];
    const before = bands[bands.length - 1];
    const goesOn = before?.high === low && before.fromLow === fromLow && before.toLow === toLow;
    if (goesOn && isUpright(before) && fromLow === fromHigh && toLow === toHigh) before.high = high;
    else bands.push({ low, high, fromLow, fromHigh, toLow, toHigh });
  });
  return bands;
}

const isUpright = ({ fromLow, fromHigh, toLow, toHigh }: Band): boolean => fromLow === fromHigh && toLow === toHigh;

/** How far timber counts on one side of a band. */
function reachOf(facing: Facing, out: 1 | -1, end: 'Low' | 'High', halfGap: number): number {
  const [own, other] = [facing[`own${end}`], facing[`other${end}`]];
  return facing.meets === 'nothing' ? Math.round(own + out * halfGap) : out * Math.max(out * own, out * other);
}

/** An end is a butt joint if any of it meets a board; else it is what its furthest part meets. */
function endShape(
  { box }: PieceFacts,
  side: Facing['side'],
  facings: readonly Facing[],
  joint: EndJoint | undefined,
  halfGap: number,
  seat: SeatOf,
): EndShape {
  if (joint !== undefined) return { meets: 'board', position: joint.position, joint, facings };
  const out = side === 'low' ? -1 : 1;
  const edge = side === 'low' ? box.u0 : box.u1;
  const others = facings.filter(({ meets }) => meets !== 'piece');
  const outermost = (others.length > 0 ? others : facings).reduce<Facing | undefined>(
    (best, each) => (best === undefined || furthest(each, out) > furthest(best, out) ? each : best),
    undefined,
  );
  if (outermost?.meets === 'wall' || outermost?.meets === 'opening') return { meets: outermost.meets, position: edge, facings };
  const position = Math.round(edge + out * halfGap);
  const end = { low: box.v0, high: box.v1, atLow: position, atHigh: position };
  const line = { ...end, gap: 2 * halfGap, parts: [end] };
  const found = seat(line);
  return { meets: 'nothing', position, facings, loose: { ...line, ...(found && { seat: found }) } };
}

/** Of parts equally far out one that meets something counts before one that meets nothing. */
const furthest = ({ ownLow, ownHigh, meets }: Facing, out: number): number =>
  2 * Math.max(out * ownLow, out * ownHigh) - (meets === 'nothing' ? 1 : 0);
