import { type AllowedGaps, allowedGaps } from './allowedGaps.js';
import type { Ceiling } from './ceiling.js';
import { crossSections, type Section } from './crossSections.js';
import { type Cell, emptyCells } from './emptyCells.js';
import { type GridPoint, type Solid, turned } from './solid.js';

/** The ceiling looked at both ways, and the gaps that no rule allows. */
export interface Views {
  /** Bands across the joists. */
  readonly across: readonly Section[];
  /** Bands along the joists: `u` and `v` changed over. */
  readonly along: readonly Section[];
  readonly bare: readonly Cell[];
  readonly allowed: AllowedGaps;
}

/**
 * Looks along the joists for the gaps that the rules allow between rows and beside walls, takes them as filled, and then looks
 * across for gaps between ends and beside the other walls. What is left has nothing over it and no excuse. Both ways are
 * needed: a slanting wall shows well only to one of them, and where gaps cross each is long the other way.
 */
export function viewsOf(ceiling: Ceiling): Views {
  const { room, whole, openings, cores, pieces } = ceiling;
  const solids = [room, ...(whole ? [whole] : []), ...openings, ...cores, ...pieces];
  const allowed = allowedGaps(ceiling);
  const along = crossSections(solids.map(turned));
  const filled = along
    .flatMap(emptyCells)
    .map(turnedBack)
    .filter(allowed.betweenRows)
    .map(({ corners }, index): Solid => ({ kind: 'filled', index, rings: [corners] }));
  const across = crossSections([...solids, ...filled]);
  const bare = across.flatMap(emptyCells).filter((cell) => !allowed.betweenEnds(cell));
  return { across, along, bare, allowed };
}

const turnedBack = (cell: Cell): Cell => {
  const [a, b, c, d] = cell.corners.map(({ u, v }): GridPoint => ({ u: v, v: u }));
  return { ...cell, corners: [a, b, c, d] };
};
