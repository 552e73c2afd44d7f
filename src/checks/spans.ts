import { type Finding, finding } from '../rules/finding.js';
import { greatestOf, lookUp } from '../rules/ruleValue.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { type Ceiling, gridRule } from './ceiling.js';
import type { Facing } from './facings.js';
import { placeOf } from './place.js';
import type { PieceShape, Structure } from './structure.js';
import type { Support } from './supports.js';

/** Bays wider than the board may span, and boards that reach too far past their last joist at a wall. */
export function spans(ceiling: Ceiling, structure: Structure): Finding[] {
  return [...wideBays(ceiling, structure), ...overhangs(ceiling, structure)];
}

interface Bay {
  readonly from: Support;
  readonly to: Support;
  readonly width: number;
  readonly piece: PieceShape;
  readonly level: number;
}

/** Noggings cannot be added from below, so that the table's rows without intermediate noggings judge. */
function wideBays(ceiling: Ceiling, { pieces, rows, supports }: Structure): Finding[] {
  const widest = new Map<string, Bay>();
  for (const row of rows) {
    const level = Math.round((row.low + row.high) / 2);
    const crossing = supports.filter(({ low, high }) => low <= level && level <= high);
    crossing.slice(1).forEach((to, i) => {
      const from = crossing[i];
      const [start, end] = [from.centre(level), to.centre(level)];
      const piece = pieces.find(
        (each) => each.row === row.row && Math.max(each.low.reach, start) < Math.min(each.high.reach, end),
      );
      const key = `${from.joist.id} ${to.joist.id}`;
      if (piece && end - start > (widest.get(key)?.width ?? 0)) widest.set(key, { from, to, width: end - start, piece, level });
    });
  }
  return [...widest.values()].flatMap((bay) => wideBay(bay, ceiling));
}

function wideBay({ from, to, width, piece, level }: Bay, { rules, frame }: Ceiling): Finding[] {
  const thickness = piece.facts.stock?.thickness;
  if (thickness === undefined) return [];
  const given = { boardThickness: thickness, orientation: 'across', noggings: false } as const;
  const limit = lookUp(rules, 'support.centres', given);
  if (limit === undefined || limit.value === null || width <= toGrid(greatestOf(limit))) return [];
  const { at, words } = placeOf(frame, (from.centre(level) + to.centre(level)) / 2, level);
  return [
    finding('support-centres-exceeded', 'warning', {
      where: { piece: piece.facts.id, joist: from.joist.id, at },
      value: fromGrid(width),
      limit: limit.value,
      unit: 'mm',
      source: limit.source,
      words: { ...words, thickness },
    }),
  ];
}

interface Overhang {
  readonly facing: Facing;
  readonly support: Support;
  readonly reach: number;
  readonly level: number;
}

/** For each wall that runs with the joists, the furthest that a board reaches past its last joist. */
function overhangs(ceiling: Ceiling, { pieces, supports, endFacings }: Structure): Finding[] {
  const ring = ceiling.room.rings[0];
  const worst = new Map<number, Overhang>();
  for (const facing of endFacings) {
    if (facing.meets !== 'wall') continue;
    const [a, b] = [ring[facing.other], ring[(facing.other + 1) % ring.length]];
    if (Math.abs(b.v - a.v) < Math.abs(b.u - a.u)) continue;
    const levels = [
      { level: facing.low, wall: facing.otherLow },
      { level: facing.high, wall: facing.otherHigh },
    ];
    for (const { level, wall } of levels) {
      const over = overhangAt(facing, level, wall, pieces[facing.piece], supports);
      if (over && over.reach > (worst.get(facing.other)?.reach ?? 0)) worst.set(facing.other, over);
    }
  }
  const { steps, rule } = gridRule(ceiling.rules, 'perimeter.overhang');
  return [...worst.entries()]
    .filter(([, { reach }]) => reach > steps)
    .map(([wall, { facing, support, reach, level }]) => {
      const inwards = facing.side === 'low' ? -reach / 2 : reach / 2;
      const { at, words } = placeOf(ceiling.frame, support.centre(level) + inwards, level);
      const where = { piece: ceiling.about[facing.piece].id, joist: support.joist.id, wall, at };
      const [value, limit] = [fromGrid(reach), fromGrid(steps)];
      const severity = rule.level === 'must' ? 'error' : 'warning';
      return finding('perimeter-overhang', severity, { where, value, limit, unit: 'mm', source: rule.source, words });
    });
}

/** From the wall to the nearest joist under the piece. */
function overhangAt(
  facing: Facing,
  level: number,
  wall: number,
  { low, high }: PieceShape,
  supports: readonly Support[],
): Overhang | undefined {
  let nearest: Overhang | undefined;
  for (const support of supports) {
    const centre = support.centre(level);
    if (support.low > facing.low || support.high < facing.high || centre < low.reach || centre > high.reach) continue;
    const reach = facing.side === 'low' ? centre - wall : wall - centre;
    if (reach >= 0 && (nearest === undefined || reach < nearest.reach)) nearest = { facing, support, reach, level };
  }
  return nearest;
}
