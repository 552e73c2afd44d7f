import { type Finding, finding } from '../../rules/finding.js';
import { greatestOf, lookUp } from '../../rules/ruleValue.js';
import { fromGrid, toGrid } from '../../survey/grid.js';
import { givenRule } from './givenRule.js';
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
  const carried = givenRule(set, 'perimeter.overhang').steps;
  return parts.flatMap((part) => {
    const widest = widestBay(part, carried, toGrid(greatestOf(rule)));
    if (widest === undefined) return [];
    return [
      finding('support-centres-exceeded', 'warning', {
        where: { joist: widest.to.joist.id },
        value: fromGrid(widest.width),
        limit,
        unit: 'mm',
        source: rule.source,
        words: { thickness },
      }),
    ];
  });
}

/** Two timbers with nothing between them that a piece lies across; grid steps. */
interface Bay {
  readonly to: Support;
  readonly width: number;
  /** Along the joists, how much of the piece lies across it. */
  readonly along: number;
}

/**
 * Joists fan and stop short, so that bays are measured strip by strip. Where a joist stops, a strip no longer than a board may reach
 * past its last timber is carried by what lies beside it: by the trimmer on which the joist ends, say, as far as the hatch.
 */
function widestBay({ supports, pieces }: LaidPart, carried: number, limit: number): Bay | undefined {
  let widest: Bay | undefined;
  for (const up of pieces) {
    for (const bay of baysUnder(up, supports)) {
      if (bay.width <= Math.max(limit, widest?.width ?? 0)) continue;
      if (bay.along > Math.min(carried, (up.high - up.low) / 2)) widest = bay;
    }
  }
  return widest;
}

/** A butt joint is on a joist, so that one piece lies across the whole of a bay, or none. */
function baysUnder(up: PieceUp, supports: readonly Support[]): Bay[] {
  const bays = new Map<string, Bay>();
  const levels = levelsOf(up, supports);
  for (let i = 1; i < levels.length; i++) {
    const [low, high] = [levels[i - 1], levels[i]];
    const level = Math.floor((low + high) / 2);
    const here = supports.filter((support) => support.low <= low && high <= support.high);
    for (let j = 1; j < here.length; j++) {
      const [from, to] = [here[j - 1], here[j]];
      if (!liesAcross(up, from.centre(level), to.centre(level), level)) continue;
      const key = `${from.joist.id} ${to.joist.id}`;
      const { width = 0, along = 0 } = bays.get(key) ?? {};
      const widths = [low, high].map((edge) => to.centre(edge) - from.centre(edge));
      bays.set(key, { to, width: Math.max(width, ...widths), along: along + high - low });
    }
  }
  return [...bays.values()];
}

/** Where along the joists a piece, an opening in it, or a timber begins or ends. */
function levelsOf({ outline, holes, low, high }: PieceUp, supports: readonly Support[]): number[] {
  const corners = [outline, ...holes].flatMap((ring) => ring.map(({ v }) => v));
  const ends = supports.flatMap((support) => [support.low, support.high]);
  const inside = [...corners, ...ends].filter((level) => low <= level && level <= high);
  return [...new Set(inside)].sort((a, b) => a - b);
}

/** More than half of the gap at a butt joint, mm. */
const BESIDE_JOINT = 10;

function liesAcross({ outline, holes, near, far }: PieceUp, from: number, to: number, level: number): boolean {
  const [start, end] = [from + toGrid(BESIDE_JOINT), to - toGrid(BESIDE_JOINT)];
  if (near > start || far < end) return false;
  if (!stretchesAt(outline, level).some(([left, right]) => left <= start && end <= right)) return false;
  return holes.every((hole) => stretchesAt(hole, level).every(([left, right]) => right <= start || end <= left));
}
