import { type Finding, finding } from '../../rules/finding.js';
import { greatestOf, lookUp } from '../../rules/ruleValue.js';
import { fromGrid, toGrid } from '../../survey/grid.js';
import type { LaidCeiling, LaidPart, PieceUp, Support } from './laidCeiling.js';
import { stretchesAt } from './stretchesAt.js';

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

/**
 * Joists fan and stop short: bays are measured at the edges and in the middle of each row, between the joists that run there. A butt
 * joint is on a joist, so that one piece lies across the whole of a bay, or none.
 */
function widestBay({ supports, pieces, rows }: LaidPart): { readonly width: number; readonly to?: Support } {
  let widest: { readonly width: number; readonly to?: Support } = { width: 0 };
  for (const { row, low, high } of rows) {
    const inRow = pieces.filter(({ piece }) => piece.row === row);
    for (const level of [toGrid(low) + 1, toGrid((low + high) / 2), toGrid(high) - 1]) {
      const here = supports.filter((support) => support.low <= level && level <= support.high);
      for (let i = 1; i < here.length; i++) {
        const [from, to] = [here[i - 1].centre(level), here[i].centre(level)];
        if (to - from > widest.width && inRow.some((up) => liesAcross(up, from, to, level)))
          widest = { width: to - from, to: here[i] };
      }
    }
  }
  return widest;
}

/** More than half of the gap at a butt joint, mm. */
const BESIDE_JOINT = 10;

function liesAcross({ outline, near, far }: PieceUp, from: number, to: number, level: number): boolean {
  const [start, end] = [from + toGrid(BESIDE_JOINT), to - toGrid(BESIDE_JOINT)];
  if (near > start || far < end) return false;
  return stretchesAt(outline, level).some(([left, right]) => left <= start && end <= right);
}
