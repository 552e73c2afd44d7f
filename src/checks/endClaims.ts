import type { Finding, Where } from '../rules/finding.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { type Ceiling, TAKEN_UP } from './ceiling.js';
import { compared, wrong } from './claimWrong.js';
import { HAIR } from './hair.js';
import { isNamed } from './isNamed.js';
import type { EndClaim } from './layoutToCheck.js';
import { type Box, onPlan, type Ring } from './solid.js';
import type { EndShape, PieceShape } from './structure.js';

type Side = 'low' | 'high';

/** What a piece says of one of its ends. */
export function endClaims(end: EndClaim, side: Side, piece: PieceShape, ring: Ring, ceiling: Ceiling): Finding[] {
  const { facts } = piece;
  const found: EndShape = piece[side];
  const seats = found.joint === undefined ? [] : found.joint.stretches.flatMap(({ seat }) => seat ?? []);
  const joist = seats[0]?.support.joist.id;
  const where: Where = { piece: facts.id, ...(joist !== undefined && { joist }) };
  const what = `piece ${facts.id}, ${side} end`;
  const outcome = end.bearing?.outcome;
  const isCarried =
    end.joist === undefined || joist === undefined || seats.some((seat) => isNamed(seat.support.joist, end.joist));
  const isSeated = outcome === undefined || joist === undefined || seats.some(({ bearing }) => bearing.outcome === outcome);
  return [
    ...(end.meets !== undefined && !doesMeet(end.meets, found) ? [wrong(`${what} meets`, end.meets, found.meets, where)] : []),
    ...(isCarried ? [] : [wrong(`${what} on`, end.joist ?? null, joist, where)]),
    ...(isSeated ? [] : [wrong(`${what} bearing`, outcome, seats[0].bearing.outcome, where)]),
    ...positionClaim(end, side, piece, ring, ceiling, what),
    ...rakeClaim(end, side, ring, facts.box, where, `${what} rake`),
    ...madeClaim(end, side, piece, ring, what),
  ];
}

/** An end may meet a board with one part of it and a wall with another. */
const doesMeet = (claimed: EndShape['meets'], { meets, facings }: EndShape): boolean =>
  claimed === meets || facings.some((facing) => (facing.meets === 'piece' ? 'board' : facing.meets) === claimed);

/** A joint may be said to lie anywhere in its gap; a wall end where the piece ends, or as far on as a short board leaves. */
function positionClaim(end: EndClaim, side: Side, piece: PieceShape, ring: Ring, { frame }: Ceiling, what: string): Finding[] {
  if (end.position === undefined) return [];
  const { joint, position } = piece[side];
  const { box, claim, id } = piece.facts;
  const claimed = toGrid(end.position);
  if (claimed === position) return [];
  const out = side === 'low' ? -1 : 1;
  const beyond = claim.tight === true ? toGrid(TAKEN_UP) : 0;
  const { atLow, atHigh } = endCorners(ring, side, box);
  const places =
    joint === undefined
      ? [position, position + out * beyond, atLow, atHigh]
      : [joint.atLow, ...joint.parts.flatMap((part) => [part.ownLow, part.ownHigh, part.otherLow, part.otherHigh])];
  if (Math.min(...places) - HAIR <= claimed && claimed <= Math.max(...places) + HAIR) return [];
  const at = onPlan(frame, position, (box.v0 + box.v1) / 2);
  return [wrong(`${what} position`, end.position, fromGrid(position), { piece: id, at }, 'mm')];
}

/** The corners of an end at the low and at the high edge of the piece. */
function endCorners(ring: Ring, side: Side, { v0, v1 }: Box): { readonly atLow: number; readonly atHigh: number } {
  const outermost = (level: number): number => {
    const places = ring.filter(({ v }) => v === level).map(({ u }) => u);
    return side === 'low' ? Math.min(...places) : Math.max(...places);
  };
  return { atLow: outermost(v0), atHigh: outermost(v1) };
}

/** The rake of an end in one straight line; of an end with a notch or several slopes the corners decide, or nothing beyond its box. */
function rakeClaim({ rake }: EndClaim, side: Side, ring: Ring, box: Box, where: Where, what: string): Finding[] {
  if (rake === undefined) return [];
  const { atLow, atHigh } = endCorners(ring, side, box);
  const isStraight = ring.some((from, i) => {
    const to = ring[(i + 1) % ring.length];
    const [low, high] = from.v < to.v ? [from, to] : [to, from];
    return low.u === atLow && low.v === box.v0 && high.u === atHigh && high.v === box.v1;
  });
  const allowed = isStraight ? HAIR : Math.max(0, box.u1 - box.u0 - Math.abs(atHigh - atLow));
  return compared(what, rake, fromGrid(atHigh - atLow), fromGrid(allowed), where, 'mm');
}

/** An end is the board's own where it is square and at the board's end; one that is so only in part may be called either. */
function madeClaim(
  { made }: EndClaim,
  side: Side,
  { facts: { claim, stock, box, id } }: PieceShape,
  ring: Ring,
  what: string,
): Finding[] {
  if (made === undefined || claim.at === undefined || stock === undefined) return [];
  const along = toGrid(claim.at.along);
  const atEnd = side === 'low' ? along === 0 : along + box.u1 - box.u0 === toGrid(stock.length);
  const edge = side === 'low' ? box.u0 : box.u1;
  const upright = ring.reduce((sum, from, i) => {
    const to = ring[(i + 1) % ring.length];
    return from.u === edge && to.u === edge ? sum + Math.abs(to.v - from.v) : sum;
  }, 0);
  const found = atEnd && upright > 0 ? 'factory' : 'cut';
  const either = atEnd && upright > 0 && upright < box.v1 - box.v0;
  return made === found || either ? [] : [wrong(`${what} made`, made, found, { piece: id })];
}
