import type { Finding, Where } from '../rules/finding.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { type Ceiling, TAKEN_UP } from './ceiling.js';
import { compared, wrong } from './claimWrong.js';
import { HAIR } from './hair.js';
import type { EndClaim } from './layoutToCheck.js';
import { massKg } from './sizes.js';
import type { EndShape, PieceShape } from './structure.js';

/** A hair in mm. */
const CLOSE = fromGrid(HAIR);

/** How far a mass may be rounded, kg. */
const MASS_ROUNDED = 0.06;

/** What a piece says of itself and its outline does not bear out. */
export function pieceClaims(piece: PieceShape, ceiling: Ceiling): Finding[] {
  const { facts, row } = piece;
  const { claim, box, id } = facts;
  const where: Where = { piece: id };
  const named = (what: string): string => `piece ${id}, ${what}`;
  return [
    ...compared(named('row'), claim.row, row, 0, where),
    ...lengthClaim(piece, where, named('length')),
    ...compared(named('length as cut'), claim.cutLength, fromGrid(box.u1 - box.u0), CLOSE, where, 'mm'),
    ...compared(named('width'), claim.width, fromGrid(box.v1 - box.v0), CLOSE, where, 'mm'),
    ...compared(named('mass'), claim.massKg, massKg(facts), MASS_ROUNDED, where, 'kg'),
    ...tightClaim(piece, where, named('tight')),
    ...edgeClaims(piece, where, named),
    ...(claim.ends ?? []).flatMap((end, i) => endClaims(end, i === 0 ? 'low' : 'high', piece, ceiling)),
  ];
}

/** A nominal length may pass what the board gives by what a gap takes up. */
function lengthClaim({ facts: { claim }, length }: PieceShape, where: Where, what: string): Finding[] {
  const over = claim.length === undefined ? 0 : claim.length - fromGrid(length);
  const allowed = claim.tight === true && toGrid(over) > 0 ? TAKEN_UP : CLOSE;
  return compared(what, claim.length, fromGrid(length), allowed, where, 'mm');
}

/** A piece of the stock length needs a board that is not short; one that spares more than boards come short does not. */
function tightClaim({ facts: { claim, stock }, length }: PieceShape, where: Where, what: string): Finding[] {
  if (claim.tight === undefined || stock === undefined) return [];
  const nominal = claim.length === undefined ? length : toGrid(claim.length);
  const spare = toGrid(stock.length) - nominal;
  if (!claim.tight && spare <= 0) return [wrong(what, false, true, where)];
  return claim.tight && spare > toGrid(stock.lengthTolerance ?? TAKEN_UP) ? [wrong(what, true, false, where)] : [];
}

/** Only the two long edges of the board are bound. Without a place on the board a ripped piece has at least one cut edge. */
function edgeClaims({ facts: { claim, stock, box } }: PieceShape, where: Where, named: (what: string) => string): Finding[] {
  if (claim.edges === undefined || stock === undefined) return [];
  const [width, full] = [box.v1 - box.v0, toGrid(stock.width)];
  if (claim.at === undefined && width < full) {
    const bothBound = claim.edges.low === 'bound' && claim.edges.high === 'bound';
    return bothBound ? [wrong(named('edges'), 'both bound', 'one cut', where)] : [];
  }
  const across = claim.at === undefined ? 0 : toGrid(claim.at.across);
  const found = { low: across === 0 ? 'bound' : 'cut', high: across + width === full ? 'bound' : 'cut' };
  return (['low', 'high'] as const).flatMap((side) =>
    claim.edges?.[side] === found[side] ? [] : [wrong(named(`${side} edge`), claim.edges?.[side] ?? '', found[side], where)],
  );
}

function endClaims(end: EndClaim, side: 'low' | 'high', piece: PieceShape, ceiling: Ceiling): Finding[] {
  const { facts } = piece;
  const found: EndShape = piece[side];
  const seat = found.joint?.seat;
  const where: Where = { piece: facts.id, ...(seat && { joist: seat.support.joist.id }) };
  const what = `piece ${facts.id}, ${side} end`;
  const meets =
    end.meets !== undefined && end.meets !== found.meets ? [wrong(`${what} meets`, end.meets, found.meets, where)] : [];
  const joist =
    end.joist !== undefined && found.meets === 'board' && seat !== undefined && !carries(end.joist, found, ceiling)
      ? [wrong(`${what} on`, end.joist, seat.support.joist.id, where)]
      : [];
  const outcome = end.bearing?.outcome;
  const bearing =
    outcome !== undefined && seat !== undefined && outcome !== seat.bearing.outcome
      ? [wrong(`${what} bearing`, outcome, seat.bearing.outcome, where)]
      : [];
  return [
    ...meets,
    ...joist,
    ...bearing,
    ...positionClaim(end, side, piece, ceiling, what),
    ...madeClaim(end, side, piece, what),
  ];
}

/** Of two joists side by side either may be named. */
function carries(joist: string, { joint }: EndShape, { joists }: Ceiling): boolean {
  const seat = joint?.seat;
  if (seat === undefined || seat.support.joist.id === joist) return true;
  const named = joists.find(({ id }) => id === joist);
  const own = joists.find(({ id }) => id === seat.support.joist.id);
  return named !== undefined && own !== undefined && seat.support.joist.width > own.width;
}

/** A joint may be said to lie anywhere in its gap; a wall end where the piece ends, or as far on as a short board leaves. */
function positionClaim(end: EndClaim, side: 'low' | 'high', piece: PieceShape, { frame }: Ceiling, what: string): Finding[] {
  if (end.position === undefined) return [];
  const { joint, position } = piece[side];
  const claimed = toGrid(end.position);
  const out = side === 'low' ? -1 : 1;
  const beyond = piece.facts.claim.tight === true ? toGrid(TAKEN_UP) : 0;
  const [least, greatest] =
    joint === undefined
      ? [Math.min(position, position + out * beyond), Math.max(position, position + out * beyond)]
      : [Math.min(joint.firstLow, joint.firstHigh, joint.atLow), Math.max(joint.secondLow, joint.secondHigh, joint.atLow)];
  if (least - HAIR <= claimed && claimed <= greatest + HAIR) return [];
  const at = frame.back(fromGrid(position), fromGrid(Math.round((piece.facts.box.v0 + piece.facts.box.v1) / 2)));
  return [wrong(`${what} position`, end.position, fromGrid(position), { piece: piece.facts.id, at }, 'mm')];
}

function madeClaim(
  end: EndClaim,
  side: 'low' | 'high',
  { facts: { claim, stock, box, id } }: PieceShape,
  what: string,
): Finding[] {
  if (end.made === undefined || claim.at === undefined || stock === undefined) return [];
  const along = toGrid(claim.at.along);
  const factory = side === 'low' ? along === 0 : along + box.u1 - box.u0 === toGrid(stock.length);
  const found = factory ? 'factory' : 'cut';
  return end.made === found ? [] : [wrong(`${what} made`, end.made, found, { piece: id })];
}
