import { toGrid } from '../survey/grid.js';
import type { Section, Side, Span } from './crossSections.js';

/** Ends further apart than a joist is wide do not meet, mm. */
const NEIGHBOURS = 50;

/** What one side of a piece meets in one section. */
export interface Facing {
  readonly piece: number;
  /** `low`: the side with the lesser coordinate. */
  readonly side: 'low' | 'high';
  readonly low: number;
  readonly high: number;
  /** Where the piece's side is at the foot and the head of the section. */
  readonly ownLow: number;
  readonly ownHigh: number;
  /** Whether the piece's side runs along the view rather than across it: a board end in the view across the joists. */
  readonly steep: boolean;
  readonly meets: 'piece' | 'wall' | 'opening' | 'nothing';
  /** Index of the piece or opening, or of the side of the room. */
  readonly other: number;
  /** Where that is. */
  readonly otherLow: number;
  readonly otherHigh: number;
}

/** What every side of every piece meets, section by section, from low to high. */
export function facingsOf(sections: readonly Section[]): Facing[] {
  const facings: Facing[] = [];
  for (const { low, high, spans } of sections) {
    const things = spans.filter(({ solid }) => solid.kind === 'piece' || solid.kind === 'opening');
    const rooms = spans.filter(({ solid }) => solid.kind === 'room');
    things.forEach((span, place) => {
      if (span.solid.kind !== 'piece') return;
      const room = rooms.find((each) => covers(each, span));
      facings.push(facing(span, 'low', low, high, below(span, things, place, room)));
      facings.push(facing(span, 'high', low, high, above(span, things, place, room)));
    });
  }
  return facings;
}

/** Written out field by field: there are thousands of them. */
function facing(span: Span, side: Facing['side'], low: number, high: number, found: Met): Facing {
  return {
    piece: span.solid.index,
    side,
    low,
    high,
    ownLow: side === 'low' ? span.leftLow : span.rightLow,
    ownHigh: side === 'low' ? span.leftHigh : span.rightHigh,
    steep: isSteep(side === 'low' ? span.left : span.right),
    meets: found.meets,
    other: found.other,
    otherLow: found.otherLow,
    otherHigh: found.otherHigh,
  };
}

const isSteep = ({ from, to }: Side): boolean => Math.abs(to.u - from.u) <= to.v - from.v;

type Met = Pick<Facing, 'meets' | 'other' | 'otherLow' | 'otherHigh'>;

const middle = (span: Span): number => span.leftLow + span.leftHigh + span.rightLow + span.rightHigh;

const covers = (room: Span, span: Span): boolean => {
  const at = middle(span);
  return 2 * (room.leftLow + room.leftHigh) <= at && at <= 2 * (room.rightLow + room.rightHigh);
};

const nothing = (low: number, high: number): Met => ({ meets: 'nothing', other: -1, otherLow: low, otherHigh: high });

/** Twice a distance at which things no longer meet; sums of foot and head are compared. */
const TOO_FAR = 2 * toGrid(NEIGHBOURS);

function below(span: Span, things: readonly Span[], place: number, room: Span | undefined): Met {
  const own = span.leftLow + span.leftHigh;
  let nearest: Span | undefined;
  for (let i = place - 1; i >= 0; i--) {
    const reach = things[i].rightLow + things[i].rightHigh;
    if (reach > own + TOO_FAR) continue;
    if (nearest === undefined || reach > nearest.rightLow + nearest.rightHigh) nearest = things[i];
  }
  const wall = room && { low: room.leftLow, high: room.leftHigh, edge: room.left.edge };
  const thing = nearest && { low: nearest.rightLow, high: nearest.rightHigh, span: nearest };
  return met({ span, thing, wall, away: (other) => own - other }, nothing(span.leftLow, span.leftHigh));
}

function above(span: Span, things: readonly Span[], place: number, room: Span | undefined): Met {
  const own = span.rightLow + span.rightHigh;
  let nearest: Span | undefined;
  for (let i = place + 1; i < things.length; i++) {
    const start = things[i].leftLow + things[i].leftHigh;
    if (start < own - TOO_FAR) continue;
    if (nearest === undefined || start < nearest.leftLow + nearest.leftHigh) nearest = things[i];
  }
  const wall = room && { low: room.rightLow, high: room.rightHigh, edge: room.right.edge };
  const thing = nearest && { low: nearest.leftLow, high: nearest.leftHigh, span: nearest };
  return met({ span, thing, wall, away: (other) => other - own }, nothing(span.rightLow, span.rightHigh));
}

interface Choice {
  readonly span: Span;
  readonly thing?: { readonly low: number; readonly high: number; readonly span: Span };
  readonly wall?: { readonly low: number; readonly high: number; readonly edge: number };
  /** Twice the distance from the piece's side outwards. */
  readonly away: (sum: number) => number;
}

/** The nearer of wall and thing. Across a hole a piece meets only what stands in the hole. */
function met({ span, thing, wall, away }: Choice, none: Met): Met {
  const toThing = thing === undefined ? Infinity : away(thing.low + thing.high);
  const toWall = wall === undefined ? Infinity : away(wall.low + wall.high);
  if (wall !== undefined && toWall <= toThing) {
    return { meets: 'wall', other: wall.edge, otherLow: wall.low, otherHigh: wall.high };
  }
  if (thing === undefined || thing.span.solid === span.solid) return none;
  const { kind, index } = thing.span.solid;
  if (kind === 'piece' && toThing > TOO_FAR) return none;
  return { meets: kind === 'piece' ? 'piece' : 'opening', other: index, otherLow: thing.low, otherHigh: thing.high };
}
