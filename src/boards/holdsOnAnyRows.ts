import { type AnyRows, anyRowsOf } from './anyRows.js';
import { askedByProgram } from './askedByProgram.js';
import { askedByWeights } from './askedByWeights.js';
import type { PlacementProblem } from './placementProblem.js';
import { rowFamilies } from './rowLayouts.js';
import { type RangedRow, type RowRange, rangedRows } from './rowRange.js';

/** Ranges of divisions that are looked at; programmes that are solved for narrow ones, grid steps, and steps of all searches in them. */
const MOST_RANGES = 600;
const MOST_PROGRAMS = 100;
const NARROW = 150_000;
const STEPS = 120_000;
/** Where a programme does not tell enough of a range so narrow, halving it again would not help. */
const NARROWEST = 1000;

/** Whether the divisions into rows that are searched are all that there are; else some rows between them are not. */
const areAllSearched = ({ parts, rowWidths }: PlacementProblem): boolean =>
  rowWidths !== undefined ||
  parts.some(({ standing }) => standing.up.length > 0) ||
  (parts.length === 1 && parts[0].clear === undefined);

/**
 * What holds on whatever rows: full ones, and at most one ripped at each side. Ranges of divisions are halved until what all divisions
 * of a range have in common asks for enough.
 */
export interface OnAnyRows {
  /** Whether every layout takes so many boards, on the rows that are searched and on others, as a quick look tells. */
  readonly takes: (boards: number) => boolean;
  /** Whether every layout on rows that are not searched takes so many boards. */
  readonly takesBeside: (boards: number) => boolean;
  /** Whether every layout on rows that are not searched has so many butt joints. */
  readonly hasJointsBeside: (joints: number) => boolean;
}

/** Where there are no rows but those that are searched, a quick look tells nothing of them, and all holds of the others. */
export function onAnyRows(problem: PlacementProblem): OnAnyRows {
  if (areAllSearched(problem)) return { takes: () => false, takesBeside: () => true, hasJointsBeside: () => true };
  let known: AnyRows | undefined;
  const any = (): AnyRows => {
    known ??= anyRowsOf(problem);
    return known;
  };
  return {
    takes: (boards) => holdsOnRanges(any(), 'all', (rows) => askedByWeights(any(), rows, boards)),
    takesBeside: (boards) => {
      if (boards <= 0) return true;
      let programs = 0;
      const steps = { left: STEPS };
      return holdsOnRanges(any(), 'not searched', (rows, width) => {
        if (askedByWeights(any(), rows, boards)) return true;
        return width <= NARROW && programs++ < MOST_PROGRAMS && askedByProgram(problem, rows, boards, steps);
      });
    },
    hasJointsBeside: (joints) =>
      holdsOnRanges(any(), 'not searched', (rows) => rows.reduce((sum, { line }) => sum + line.joints, 0) >= joints),
  };
}

/** Whether something holds on all divisions, each in some range on which it holds. */
function holdsOnRanges(
  any: AnyRows,
  which: 'all' | 'not searched',
  holds: (rows: readonly RangedRow[], width: number) => boolean,
): boolean {
  const { problem } = any;
  let open: (readonly RowRange[])[] = [[]];
  for (const part of problem.parts.keys()) {
    // In one part each division that stands alone is searched.
    const isOpen = which === 'all' || problem.parts.length > 1;
    const families = rowFamilies(problem, part).filter(({ from, to }) => isOpen || to > from);
    open = open.flatMap((ranges) => families.map((family) => [...ranges, { part, family, from: family.from, to: family.to }]));
    if (open.length > MOST_RANGES) return false;
  }
  for (let looked = 0; open.length > 0; looked++) {
    const ranges = open.pop() as readonly RowRange[];
    const widest = ranges.reduce((a, b) => (b.to - b.from > a.to - a.from ? b : a));
    const { from, to } = widest;
    if (holds(rangedRows(any, ranges), to - from)) continue;
    if (to - from <= NARROWEST || looked > MOST_RANGES) return false;
    const middle = Math.floor((from + to) / 2);
    for (const half of [
      { from, to: middle },
      { from: middle + 1, to },
    ])
      open.push(ranges.map((range) => (range === widest ? { ...range, ...half } : range)));
  }
  return true;
}
