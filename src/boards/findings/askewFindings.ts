import { type Finding, finding } from '../../rules/finding.js';
import { fromGrid, toGrid } from '../../survey/grid.js';
import type { LaidCeiling } from './laidCeiling.js';

/**
 * Rows lie along x or y. Parts whose joists, all together, run aside by more than the width of one of them over the width of a row:
 * there the rows are not square to the joists, and every butt joint is raked. Joists that fan out to both sides are not askew.
 */
export function askewFindings({ parts }: LaidCeiling): Finding[] {
  return parts.flatMap(({ supports, rows }): Finding[] => {
    const along = supports.reduce((sum, { low, high }) => sum + high - low, 0);
    if (along === 0) return [];
    const across = Math.abs(supports.reduce((sum, { low, high, centre }) => sum + centre(high) - centre(low), 0));
    const width = Math.max(...rows.map((row) => row.width));
    const limit = Math.min(...supports.map(({ joist }) => joist.width));
    if (across * toGrid(width) <= toGrid(limit) * along) return [];
    const value = Math.round((across * width) / along);
    const inMetre = fromGrid(Math.round((across * 1000) / along) * 1000);
    return [
      finding('rows-askew', 'warning', {
        where: { joist: supports[0].joist.id },
        value,
        limit,
        unit: 'mm',
        words: { width, inMetre },
      }),
    ];
  });
}
