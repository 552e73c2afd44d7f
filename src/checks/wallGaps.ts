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
  const nearest = new Map<string, { facing: Facing; wall: number; gap: number; at: GridPoint }>();
  const consider = (facing: Facing, along: boolean): void => {
    const { piece, side, low, high, ownLow, ownHigh, meets, other, otherLow, otherHigh } = facing;
    const beyond =
      side === 'low' ? Math.min(ownLow - otherLow, ownHigh - otherHigh) : Math.min(otherLow - ownLow, otherHigh - ownHigh);
    if (meets !== 'wall' || beyond < 0) return;
    const line = ceiling.sides[other];
    const { wall } = line;
    if (wall === undefined) return;
    const place = (own: number, level: number): GridPoint => (along ? { u: level, v: own } : { u: own, v: level });
    const own = { from: place(ownLow, low), to: place(ownHigh, high) };
    const note = (at: GridPoint, gap: number): void => {
      if (gap >= least - HAIR) return;
      const key = `${piece} ${wall}`;
      if (gap < (nearest.get(key)?.gap ?? Infinity)) nearest.set(key, { facing, wall, gap, at });
    };
    note(own.from, distance(own.from, line));
    note(own.to, distance(own.to, line));
    if (ownLow === ownHigh) return;
    // A corner of the walls may be nearest to a slanting side in the middle of it.
    for (const at of [place(otherLow, low), place(otherHigh, high)]) note(at, distance(at, own));
  };
  for (const facing of endFacings) consider(facing, false);
  for (const facing of edgeFacings) consider(facing, true);
  return [...nearest.values()].map(({ facing, wall, gap, at: { u, v } }) => {
    const { at, words } = placeOf(ceiling.frame, u, v);
    return finding('perimeter-gap', 'error', {
      where: { piece: ceiling.about[facing.piece].id, wall, at },
      value: fromGrid(gap),
      limit: fromGrid(least),
      unit: 'mm',
      source: rule.source,
      words,
    });
  });
}
