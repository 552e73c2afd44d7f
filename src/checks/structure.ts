import { type Ceiling, gridRule, type PieceFacts, perimeterGap } from './ceiling.js';
import { type Facing, facingsOf } from './facings.js';
import { HAIR } from './hair.js';
import { type Joint, jointsOf } from './joints.js';
import { type RowShape, rowsOf } from './rowShapes.js';
import { type EndLine, type Seat, type Support, seatOf, supportsOf, withDoubled } from './supports.js';
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
}

export interface EndShape {
  readonly meets: 'board' | 'wall' | 'opening' | 'nothing';
  /** Centre line of the joint, or the end of the piece. */
  readonly position: number;
  /** How far timber counts for this end: to the joint's centre line, or to the wall or opening. */
  readonly reach: number;
  readonly joint?: EndJoint;
  /** Of an end that meets nothing. */
  readonly loose?: EndLine & { readonly seat?: Seat };
}

export interface EndJoint extends Joint {
  readonly line: EndLine;
  readonly seat?: Seat;
  /** Centre line at the foot and the head: the joist's where it lies in the gap, else the middle of the gap. */
  readonly atLow: number;
  readonly atHigh: number;
  readonly position: number;
}

export function structureOf(ceiling: Ceiling, { across, along }: Views): Structure {
  const endFacings = facingsOf(across);
  const edgeFacings = facingsOf(along);
  const supports = supportsOf(ceiling.joists, ceiling.frame);
  const timber = withDoubled(supports);
  const slack = perimeterGap(ceiling.rules).greatest;
  const seat = (line: EndLine): Seat | undefined => seatOf(line, timber, slack, ceiling.rules);
  const endJoints = jointsOf(endFacings).map((joint) => seated(joint, seat));
  const rows = rowsOf(ceiling.about.map(({ box }) => box));
  const bySide = groupedBySide(endFacings);
  const halfGap = gridRule(ceiling.rules, 'joint.gap').steps / 2;
  const pieces = ceiling.about.map((facts, index): PieceShape => {
    const end = (side: Facing['side']): EndShape => {
      const joint = endJoints.find((each) => (side === 'low' ? each.second : each.first) === index);
      return endShape(facts, side, bySide.get(`${index} ${side}`) ?? [], joint, halfGap, seat);
    };
    const [low, high] = [end('low'), end('high')];
    const row = rows.find((each) => each.pieces.includes(index))?.row ?? 0;
    return { index, facts, row, low, high, length: high.position - low.position };
  });
  return { pieces, rows, endJoints, edgeJoints: jointsOf(edgeFacings), supports, endFacings, edgeFacings };
}

function seated(joint: Joint, seat: (line: EndLine) => Seat | undefined): EndJoint {
  const line: EndLine = {
    low: joint.low,
    high: joint.high,
    atLow: (joint.firstLow + joint.secondLow) / 2,
    atHigh: (joint.firstHigh + joint.secondHigh) / 2,
    gap: joint.gap,
  };
  const found = seat(line);
  const centre = (v: number, first: number, second: number): number => {
    const at = found?.support.centre(v) ?? Infinity;
    return first - HAIR <= at && at <= second + HAIR ? at : Math.round((first + second) / 2);
  };
  const atLow = centre(joint.low, joint.firstLow, joint.secondLow);
  const atHigh = centre(joint.high, joint.firstHigh, joint.secondHigh);
  return { ...joint, line, ...(found && { seat: found }), atLow, atHigh, position: Math.round((atLow + atHigh) / 2) };
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

/** An end is a butt joint if any of it meets a board; else it is what its furthest part meets. */
function endShape(
  { box }: PieceFacts,
  side: Facing['side'],
  facings: readonly Facing[],
  joint: EndJoint | undefined,
  halfGap: number,
  seat: (line: EndLine) => Seat | undefined,
): EndShape {
  if (joint !== undefined) return { meets: 'board', position: joint.position, reach: joint.position, joint };
  const out = side === 'low' ? -1 : 1;
  const edge = side === 'low' ? box.u0 : box.u1;
  const outermost = facings.reduce<Facing | undefined>(
    (best, each) => (best === undefined || furthest(each, out) > furthest(best, out) ? each : best),
    undefined,
  );
  if (outermost?.meets === 'wall' || outermost?.meets === 'opening') {
    const reach = out * Math.max(out * edge, out * outermost.otherLow, out * outermost.otherHigh);
    return { meets: outermost.meets, position: edge, reach };
  }
  const position = Math.round(edge + out * halfGap);
  const line = { low: box.v0, high: box.v1, atLow: position, atHigh: position, gap: 2 * halfGap };
  const found = seat(line);
  return { meets: 'nothing', position, reach: position, loose: { ...line, ...(found && { seat: found }) } };
}

/** Of parts equally far out one that meets something counts before one that meets nothing. */
const furthest = ({ ownLow, ownHigh, meets }: Facing, out: number): number =>
  2 * Math.max(out * ownLow, out * ownHigh) - (meets === 'nothing' ? 1 : 0);
