import { type Finding, finding } from '../../rules/finding.js';
import { fromGrid, toGrid } from '../../survey/grid.js';
import type { LaidCeiling, Support } from './laidCeiling.js';

/** Parts whose rows are not square to the joists: there every butt joint is raked. */
export const askewFindings = ({ parts }: LaidCeiling): Finding[] =>
  parts.flatMap(({ supports, rows }) => askewOver(supports, Math.max(...rows.map(({ width }) => width))));

/**
 * Rows lie along x or y. Says where joists, all together, run aside by more than the width of one of them over the width of a row, mm.
 * Joists that fan out to both sides are not askew.
 */
export function askewOver(supports: readonly Support[], width: number): Finding[] {
  const along = supports.reduce((sum, { low, high }) => sum + high - low, 0);
  if (along === 0) return [];
  const across = Math.abs(supports.reduce((sum, { low, high, centre }) => sum + centre(high) - centre(low), 0));
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
}
