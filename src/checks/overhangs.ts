import { type Finding, finding } from '../rules/finding.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { type Ceiling, gridRule } from './ceiling.js';
import { distance, type Segment } from './distance.js';
import type { Facing } from './facings.js';
import { placeOf } from './place.js';
import type { GridPoint } from './solid.js';
import type { Structure } from './structure.js';
import type { Support } from './supports.js';

/** Along a slanting wall the distance to the timber is looked at this often, mm. */
const STEP = 50;

/** A timber's centre line, as far as it runs. */
interface Timber extends Segment {
  readonly support: Support;
}

interface Overhang {
  readonly facing: Facing;
  readonly timber: Timber;
  readonly reach: number;
  readonly place: GridPoint;
  /** Of the timber, the nearest to the place. */
  readonly foot: GridPoint;
}

/**
 * For each wall that runs with the joists, the furthest that a board reaches past the last timber there: a joist, or a nogging,
 * trimmer or batten as far as it reaches itself. A border towards another part of the ceiling is a wall here.
 */
export function overhangs(ceiling: Ceiling, { supports, crossing, endFacings }: Structure): Finding[] {
  const timbers = [...supports.map(lengthways), ...crossing.map(crossways)];
  const { steps, rule } = gridRule(ceiling.rules, 'perimeter.overhang');
  const worst = new Map<number, Overhang>();
  for (const facing of endFacings) {
    if (facing.meets !== 'wall') continue;
    const wall = ceiling.sides[facing.other];
    if (Math.abs(wall.to.v - wall.from.v) < Math.abs(wall.to.u - wall.from.u)) continue;
    for (const place of placesOn(facing)) {
      const over = overhangAt(facing, place, wall, timbers);
      if (over && over.reach > steps && over.reach > (worst.get(facing.other)?.reach ?? 0)) worst.set(facing.other, over);
    }
  }
  return [...worst.entries()].map(([side, { facing, timber, reach, place, foot }]) => {
    const { wall } = ceiling.sides[side];
    const { at, words } = placeOf(ceiling.frame, (place.u + foot.u) / 2, (place.v + foot.v) / 2);
    const where = {
      piece: ceiling.about[facing.piece].id,
      joist: timber.support.joist.id,
      ...(wall !== undefined && { wall }),
      at,
    };
    const [value, limit] = [fromGrid(reach), fromGrid(steps)];
    const severity = rule.level === 'must' ? 'error' : 'warning';
    return finding('perimeter-overhang', severity, { where, value, limit, unit: 'mm', source: rule.source, words });
  });
}

const lengthways = (support: Support): Timber => {
  const { low, high, centre } = support;
  return { support, from: { u: centre(low), v: low }, to: { u: centre(high), v: high } };
};

const crossways = (support: Support): Timber => {
  const { low, high, centre } = support;
  return { support, from: { u: low, v: centre(low) }, to: { u: high, v: centre(high) } };
};

/** Places of the wall that a piece's end faces: both ends where it runs straight up, else one every so often. */
function placesOn({ low, high, otherLow, otherHigh }: Facing): GridPoint[] {
  const steps = otherLow === otherHigh ? 1 : Math.ceil((high - low) / toGrid(STEP));
  return Array.from({ length: steps + 1 }, (_, k) => ({
    u: Math.round(otherLow + ((otherHigh - otherLow) * k) / steps),
    v: Math.round(low + ((high - low) * k) / steps),
  }));
}

/** A timber may run this far into a wall and still be one of this side of it, mm. */
const INTO_WALL = 50;

/** The nearest timber on the piece's own side of the wall. */
function overhangAt(facing: Facing, place: GridPoint, wall: Segment, timbers: readonly Timber[]): Overhang | undefined {
  const out = facing.side === 'low' ? -1 : 1;
  let nearest: Overhang | undefined;
  for (const timber of timbers) {
    const foot = nearestOn(timber, place);
    if (out * (foot.u - acrossAt(wall, foot.v)) > toGrid(INTO_WALL)) continue;
    const reach = foot.v === place.v ? Math.abs(foot.u - place.u) : distance(place, { from: foot, to: foot });
    if (nearest === undefined || reach < nearest.reach) nearest = { facing, foot, timber, reach, place };
  }
  return nearest;
}

/** Where the line of a wall is at a level, also beyond its ends. */
const acrossAt = ({ from, to }: Segment, v: number): number =>
  from.u === to.u ? from.u : Math.round(from.u + ((to.u - from.u) * (v - from.v)) / (to.v - from.v));

function nearestOn({ from, to }: Segment, { u, v }: GridPoint): GridPoint {
  if (from.u === to.u) return { u: from.u, v: v < from.v ? from.v : v > to.v ? to.v : v };
  const [du, dv] = [to.u - from.u, to.v - from.v];
  const squared = du * du + dv * dv;
  const share = squared === 0 ? 0 : Math.max(0, Math.min(1, ((u - from.u) * du + (v - from.v) * dv) / squared));
  return { u: Math.round(from.u + share * du), v: Math.round(from.v + share * dv) };
}
