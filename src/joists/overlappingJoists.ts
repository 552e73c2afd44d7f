import { type Finding, finding } from '../rules/finding.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import { TOUCHING } from './doubledJoists.js';
import { sideBySide } from './sideBySide.js';

/**
 * Joists that cannot both be where they were said to be. Both are kept, and nothing is averaged: a piece may be taken to lie on two
 * joists where there is one.
 *
 * @param joists - in order across the room
 */
export const overlappingJoists = (joists: readonly Joist[]): Finding[] =>
  joists.slice(1).flatMap((joist, i): Finding[] => {
    const beside = sideBySide(joists[i], joist);
    const over = beside === undefined ? 0 : -Math.min(...beside.between);
    if (beside === undefined || over <= toGrid(TOUCHING)) return [];
    const where = { joist: beside.one.id };
    return [
      finding('joists-overlap', 'warning', { where, value: fromGrid(over), unit: 'mm', words: { other: beside.other.id } }),
    ];
  });
