import { type Finding, finding } from '../rules/finding.js';
import { fromGrid } from '../survey/grid.js';
import { type Ceiling, perimeterGap } from './ceiling.js';
import { distance } from './distance.js';
import type { Facing } from './facings.js';
import { HAIR } from './hair.js';
import { placeOf } from './place.js';
import type { GridPoint } from './solid.js';
import type { Structure } from './structure.js';

/** Pieces nearer to a wall than the gap that is left there; too wide a gap is a part that is not covered. */
export function wallGaps(ceiling: Ceiling, { endFacings, edgeFacings }: Structure): Finding[] {
  const { least, rule } = perimeterGap(ceiling.rules);
  const ring = ceiling.room.rings[0];
  const nearest = new Map<string, { facing: Facing; gap: number; at: GridPoint }>();
  const consider = (facing: Facing, along: boolean): void => {
    const { piece, side, low, high, ownLow, ownHigh, meets, other, otherLow, otherHigh } = facing;
    const beyond =
      side === 'low' ? Math.min(ownLow - otherLow, ownHigh - otherHigh) : Math.min(otherLow - ownLow, otherHigh - ownHigh);
    if (meets !== 'wall' || beyond < 0) return;
    const wall = { from: ring[other], to: ring[(other + 1) % ring.length] };
    const place = (own: number, level: number): GridPoint => (along ? { u: level, v: own } : { u: own, v: level });
    for (const at of [place(ownLow, low), place(ownHigh, high)]) {
      const gap = distance(at, wall);
      const before = nearest.get(`${piece} ${other}`);
      if (gap < least - HAIR && (before === undefined || gap < before.gap)) nearest.set(`${piece} ${other}`, { facing, gap, at });
    }
  };
  for (const facing of endFacings) consider(facing, false);
  for (const facing of edgeFacings) consider(facing, true);
  return [...nearest.values()].map(({ facing, gap, at: { u, v } }) => {
    const { at, words } = placeOf(ceiling.frame, u, v);
    return finding('perimeter-gap', 'error', {
      where: { piece: ceiling.about[facing.piece].id, wall: facing.other, at },
      value: fromGrid(gap),
      limit: fromGrid(least),
      unit: 'mm',
      source: rule.source,
      words,
    });
  });
}
