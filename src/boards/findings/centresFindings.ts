import { type Finding, finding } from '../../rules/finding.js';
import { greatestOf, lookUp } from '../../rules/ruleValue.js';
import { fromGrid, toGrid } from '../../survey/grid.js';
import type { LaidCeiling, LaidPart, Support } from './laidCeiling.js';

/**
 * The widest bay of each part of the ceiling that a board lies across, where it is too wide for the board. Noggings cannot be added
 * from below, so that the rows of the table without intermediate noggings judge.
 */
export function centresFindings({ set, boards, parts }: LaidCeiling): Finding[] {
  const { thickness } = boards[0];
  const rule = lookUp(set, 'support.centres', { boardThickness: thickness, orientation: 'across', noggings: false });
  if (rule === undefined || rule.value === null) return [finding('support-centres-unknown', 'warning', { words: { thickness } })];
  const limit = rule.value;
  return parts.flatMap((part) => {
    const { width, to } = widestBay(part);
    if (to === undefined || width <= toGrid(greatestOf(rule))) return [];
    return [
      finding('support-centres-exceeded', 'warning', {
        where: { joist: to.joist.id },
        value: fromGrid(width),
        limit,
        unit: 'mm',
        source: rule.source,
        words: { thickness },
      }),
    ];
  });
}

/** Joists fan and stop short: bays are measured at the edges and in the middle of each row, between the joists that run there. */
function widestBay({ supports, pieces, rows }: LaidPart): { readonly width: number; readonly to?: Support } {
  let widest: { readonly width: number; readonly to?: Support } = { width: 0 };
  for (const { row, low, high } of rows) {
    const inRow = pieces.filter(({ piece }) => piece.row === row);
    for (const at of [low, (low + high) / 2, high]) {
      const level = toGrid(at);
      const here = supports.filter((support) => support.low <= level && level <= support.high);
      for (let i = 1; i < here.length; i++) {
        const [from, to] = [here[i - 1].centre(level), here[i].centre(level)];
        if (to - from <= widest.width || !inRow.some(({ near, far }) => Math.max(near, from) < Math.min(far, to))) continue;
        widest = { width: to - from, to: here[i] };
      }
    }
  }
  return widest;
}
