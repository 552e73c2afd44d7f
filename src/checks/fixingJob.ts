import { directionOf, type Frame, frameOf } from '../joists/frame.js';
import type { Conditions, RuleKey, RuleSet } from '../rules/ruleSet.js';
import { lookUp, type RuleValue } from '../rules/ruleValue.js';
import { toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import type { Ceiling } from './ceiling.js';
import type { Segment } from './distance.js';
import { type Box, boxOf, type GridPoint, type Ring } from './solid.js';
import type { PieceShape, Structure } from './structure.js';
import { type Support, supportsOf } from './supports.js';

/** A distance that screws are checked against, grid steps. */
export interface FixingRule {
  readonly steps: number;
  readonly rule: RuleValue;
}

/** A side of a piece or of a hole in it, and how far screws stay from it; grid steps, in the frame of the joists. */
export interface BoardSide extends Segment {
  readonly least: FixingRule;
  /** Whether it runs along the joists, as a board end does. */
  readonly isEnd: boolean;
  /** Present where the layout does not say whether the edge is bound, and it is taken as cut: enough if it is bound after all. */
  readonly enough?: number;
}

/** A timber in the frame of its own direction. */
export interface Timber {
  readonly joist: Joist;
  readonly frame: Frame;
  readonly support: Support;
  readonly half: number;
}

/** What the screws of a layout are checked by. */
export interface FixingJob {
  readonly ceiling: Ceiling;
  readonly structure: Structure;
  readonly timbers: readonly Timber[];
  /** Per piece. */
  readonly sides: readonly (readonly BoardSide[])[];
  readonly rule: (key: RuleKey) => FixingRule | undefined;
}

export function fixingJob(
  ceiling: Ceiling,
  structure: Structure,
  fixing: 'screw' | 'nail',
  boardThickness: number | undefined,
): FixingJob {
  const { supports } = structure;
  const middle = boxOf(ceiling.room.rings[0]);
  const level = Math.round((middle.v0 + middle.v1) / 2);
  const bays = supports.slice(1).map((support, i) => support.centre(level) - supports[i].centre(level));
  const given: Conditions = {
    fixing,
    ...(boardThickness !== undefined && { boardThickness }),
    ...(bays.length > 0 && { centres: Math.max(...bays) / 1000 }),
  };
  const rule = (key: RuleKey): FixingRule | undefined => ruleFor(ceiling.rules, key, given);
  return {
    ceiling,
    structure,
    timbers: ceiling.joists.flatMap(timberOf),
    sides: structure.pieces.map((piece) => sidesOf(piece, ceiling, rule)),
    rule,
  };
}

function ruleFor(rules: RuleSet, key: RuleKey, given: Conditions): FixingRule | undefined {
  const rule = lookUp(rules, key, given) ?? lookUp(rules, key);
  return rule === undefined || rule.value === null ? undefined : { steps: toGrid(rule.value), rule };
}

function timberOf(joist: Joist): Timber[] {
  const frame = frameOf(directionOf([joist]));
  return supportsOf([joist], frame).map((support) => ({ joist, frame, support, half: toGrid(joist.width / 2) }));
}

function sidesOf(piece: PieceShape, ceiling: Ceiling, rule: (key: RuleKey) => FixingRule | undefined): BoardSide[] {
  const { box } = piece.facts;
  const edges = edgesOf(piece, ceiling);
  const [boundRule, cutRule] = [rule('fixing.boundEdgeDistance'), rule('fixing.cutEdgeDistance')];
  return ceiling.pieces[piece.index].rings.flatMap((ring, hole) =>
    segments(ring).flatMap(({ from, to }): BoardSide[] => {
      const edge = hole === 0 && from.v === to.v ? edgeAt(from.v, box, edges) : 'cut';
      const least = edge === 'bound' ? boundRule : cutRule;
      if (least === undefined) return [];
      const isEnd = hole === 0 && Math.abs(to.v - from.v) > Math.abs(to.u - from.u);
      return [{ from, to, least, isEnd, ...(edge === 'unknown' && boundRule && { enough: boundRule.steps }) }];
    }),
  );
}

const segments = (ring: Ring): Segment[] => ring.map((from, i) => ({ from, to: ring[(i + 1) % ring.length] }));

type Edge = 'bound' | 'cut' | 'unknown';

const edgeAt = (level: number, { v0, v1 }: Box, { low, high }: Readonly<Record<'low' | 'high', Edge>>): Edge =>
  level === v0 ? low : level === v1 ? high : 'cut';

/**
 * Which long edges are bound, if the layout says so or says where on its board the piece lies. Else a piece as wide as its
 * board, or as the widest piece where the board is not known, has both; a narrower one has one at most, and which is unknown.
 */
function edgesOf({ facts: { claim, stock, box } }: PieceShape, { about }: Ceiling): { readonly low: Edge; readonly high: Edge } {
  if (claim.edges) return claim.edges;
  const widthOf = (each: Box): number => each.v1 - each.v0;
  const full = stock === undefined ? Math.max(...about.map((each) => widthOf(each.box))) : toGrid(stock.width);
  if (widthOf(box) >= full) return { low: 'bound', high: 'bound' };
  if (claim.at === undefined || stock === undefined) return { low: 'unknown', high: 'unknown' };
  const across = toGrid(claim.at.across);
  return { low: across === 0 ? 'bound' : 'cut', high: across + widthOf(box) === full ? 'bound' : 'cut' };
}

/** A place of one frame in another. */
export const reframed = (point: GridPoint, from: Frame, to: Frame): GridPoint => to.into(from.back(point.u, point.v));

/** Whether a place is inside rings: an odd number of them around it. */
export function isInside({ u, v }: GridPoint, rings: readonly Ring[]): boolean {
  let inside = false;
  for (const ring of rings) {
    for (const { from, to } of segments(ring)) {
      if (from.v > v === to.v > v) continue;
      const side = (to.u - from.u) * (v - from.v) - (u - from.u) * (to.v - from.v);
      if (side > 0 === to.v > from.v) inside = !inside;
    }
  }
  return inside;
}
