import type { Finding, Where } from '../rules/finding.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { type Ceiling, TAKEN_UP } from './ceiling.js';
import { compared, wrong } from './claimWrong.js';
import { endClaims } from './endClaims.js';
import { HAIR } from './hair.js';
import { handClaim } from './handClaim.js';
import { type LongEdge, longEdges } from './longEdges.js';
import { massKg } from './sizes.js';
import { type Ring, upright } from './solid.js';
import type { PieceShape } from './structure.js';

/** A hair in mm. */
const CLOSE = fromGrid(HAIR);

/** How far a mass may be rounded, kg. */
const MASS_ROUNDED = 0.06;

/** What a piece says of itself and its outline does not bear out. */
export function pieceClaims(piece: PieceShape, ceiling: Ceiling): Finding[] {
  const { facts, row, index } = piece;
  const { claim, box, id } = facts;
  const where: Where = { piece: id };
  const named = (what: string): string => `piece ${id}, ${what}`;
  const { rings } = ceiling.pieces[index];
  const [ring] = rings;
  const edges = longEdges(ring, box);
  return [
    ...compared(named('row'), claim.row, row, 0, where),
    ...(claim.zone !== undefined && claim.zone !== ceiling.zone
      ? [wrong(named('zone'), claim.zone, ceiling.zone ?? 'none', where)]
      : []),
    ...lengthClaim(piece, ring, edges, where, named('length')),
    ...compared(named('length as cut'), claim.cutLength, fromGrid(box.u1 - box.u0), CLOSE, where, 'mm'),
    ...compared(named('width'), claim.width, fromGrid(box.v1 - box.v0), CLOSE, where, 'mm'),
    ...compared(named('mass'), claim.massKg, massKg(facts), MASS_ROUNDED, where, 'kg'),
    ...tightClaim(piece, where, named('tight')),
    ...edgeClaims(piece, edges, where, named),
    ...edgeLengthClaims(piece, edges, where, named),
    ...handClaim(facts, rings, where, named('hand')),
    ...(claim.ends ?? []).flatMap((end, i) => endClaims(end, i === 0 ? 'low' : 'high', piece, ring, ceiling)),
  ];
}

/**
 * A nominal length may pass what the board gives by what a gap takes up. Where ends are raked or joists lean, it is that of the
 * longer edge, to any line within the gap of a butt joint.
 */
function lengthClaim(
  { facts: { claim, box }, length, low, high }: PieceShape,
  ring: Ring,
  edges: readonly LongEdge[],
  where: Where,
  what: string,
): Finding[] {
  if (claim.length === undefined) return [];
  const joints = [low.joint, high.joint].flatMap((joint) => joint ?? []);
  const leans = joints.some(({ stretches }) => stretches.some(({ seat }) => seat !== undefined && seat.support.steepness < 1));
  if (!leans && ring.length === 4 && upright(ring)) {
    const allowed = claim.tight === true && toGrid(claim.length - fromGrid(length)) > 0 ? TAKEN_UP : CLOSE;
    return compared(what, claim.length, fromGrid(length), allowed, where, 'mm');
  }
  const least = Math.max(...edges.map(({ level }) => level));
  const gaps = joints.reduce((sum, { gap }) => sum + Math.max(0, gap), 0);
  const greatest = box.u1 - box.u0 + gaps + (claim.tight === true ? toGrid(TAKEN_UP) : 0);
  const claimed = toGrid(claim.length);
  if (least - HAIR <= claimed && claimed <= greatest + HAIR) return [];
  return [wrong(what, claim.length, fromGrid(claimed < least ? least : greatest), where, 'mm')];
}

/** A piece of the stock length needs a board that is not short; one that spares more than boards come short does not. */
function tightClaim({ facts: { claim, stock }, length }: PieceShape, where: Where, what: string): Finding[] {
  if (claim.tight === undefined || stock === undefined) return [];
  const nominal = claim.length === undefined ? length : toGrid(claim.length);
  const spare = toGrid(stock.length) - nominal;
  if (!claim.tight && spare <= 0) return [wrong(what, false, true, where)];
  return claim.tight && spare > toGrid(stock.lengthTolerance ?? TAKEN_UP) ? [wrong(what, true, false, where)] : [];
}

/**
 * Only the two long edges of the board are bound. Without a place on the board a ripped piece has at least one cut edge. An edge
 * that lies on the board's own for a part of its length may be called either.
 */
function edgeClaims(
  { facts: { claim, stock, box } }: PieceShape,
  [lowEdge, highEdge]: readonly LongEdge[],
  where: Where,
  named: (what: string) => string,
): Finding[] {
  if (claim.edges === undefined || stock === undefined) return [];
  const [width, full] = [box.v1 - box.v0, toGrid(stock.width)];
  if (claim.at === undefined && width < full) {
    const bothBound = claim.edges.low === 'bound' && claim.edges.high === 'bound';
    return bothBound ? [wrong(named('edges'), 'both bound', 'one cut', where)] : [];
  }
  const across = claim.at === undefined ? 0 : toGrid(claim.at.across);
  const sides = [
    { side: 'low', onBoard: across === 0, edge: lowEdge },
    { side: 'high', onBoard: across + width === full, edge: highEdge },
  ] as const;
  return sides.flatMap(({ side, onBoard, edge }) => {
    const claimed = claim.edges?.[side] ?? 'cut';
    const found = onBoard && edge.level > 0 ? 'bound' : 'cut';
    const either = onBoard && edge.level > 0 && edge.level < edge.whole;
    return claimed === found || either ? [] : [wrong(named(`${side} edge`), claimed, found, where)];
  });
}

/** Of an edge with steps or a scribe in it the level part may be meant, or all of it. */
function edgeLengthClaims(
  { facts: { claim } }: PieceShape,
  [low, high]: readonly LongEdge[],
  where: Where,
  named: (what: string) => string,
): Finding[] {
  const { edgeLengths } = claim;
  if (edgeLengths === undefined) return [];
  const each = (side: 'low' | 'high', { level, whole }: LongEdge): Finding[] => {
    const claimed = toGrid(edgeLengths[side]);
    if (level - HAIR <= claimed && claimed <= whole + HAIR) return [];
    return [wrong(named(`${side} edge length`), edgeLengths[side], fromGrid(claimed < level ? level : whole), where, 'mm')];
  };
  return [...each('low', low), ...each('high', high)];
}
