import { type AnyRows, anyRowsOf } from './anyRows.js';
import { askedByWeights } from './askedByWeights.js';
import type { PlacementProblem } from './placementProblem.js';
import type { RowLayout } from './rowLayouts.js';
import { allRanges, halved, type RangedRow, type Ranges, rangedRows } from './rowRange.js';
import { isAskedBeside, nameOf, rowsLeft } from './rowsBetween.js';

/** Ranges of divisions that are looked at. */
const MOST_RANGES = 600;
/** Steps of all searches on rows that are not searched otherwise, in a room of one part and of several. */
const STEPS = 1_000_000;
const STEPS_OF_PARTS = 120_000;
/** Steps to tell where fewer boards may do, without searches. */
const STEPS_OF_PROGRAMS = 100_000;

/** Whether the divisions into rows that are searched are all that there are; else some rows between them are not. */
export const areAllSearched = ({ parts, rowWidths }: PlacementProblem): boolean =>
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
  /** Divisions that are not searched on which fewer boards may do, as far as linear programmes tell. */
  readonly leftFor: (boards: number) => RowLayout[];
  /** Whether every layout on rows that are not searched takes so many boards; of some of them that may be known. */
  readonly takesBeside: (boards: number, isSettled: (rows: RowLayout) => boolean) => boolean;
  /** Whether every layout on rows that are not searched has so many butt joints. */
  readonly hasJointsBeside: (joints: number) => boolean;
}

/** `searched` are the divisions that are searched, with so many steps. Where there are no rows but those that are searched, a quick look tells nothing of them, and all holds of the others. */
export function onAnyRows(problem: PlacementProblem, searched: readonly RowLayout[], budget: number): OnAnyRows {
  if (areAllSearched(problem))
    return { takes: () => false, leftFor: () => [], takesBeside: () => true, hasJointsBeside: () => true };
  let known: AnyRows | undefined;
  const any = (): AnyRows => {
    known ??= anyRowsOf(problem, searched);
    return known;
  };
  // Where several parts vary, a programme tells little of them together.
  const isOne = problem.parts.length === 1;
  const most = Math.min(2 * budget, isOne ? STEPS : STEPS_OF_PARTS);
  const names = new Set(searched.map(nameOf));
  let proven = 0;
  const keep = (boards: number, holds: boolean): boolean => {
    if (holds) proven = Math.max(proven, boards);
    return holds;
  };
  return {
    takes: (boards) =>
      keep(
        boards,
        holdsOnRanges(any(), 'all', (rows) => askedByWeights(any(), rows, boards)),
      ),
    leftFor: (boards) => {
      if (!isOne) return [];
      const { rows, isAll } = rowsLeft(any(), boards, { left: Math.min(budget, STEPS_OF_PROGRAMS) });
      keep(boards, isAll && rows.length === 0);
      return rows.filter((each) => !names.has(nameOf(each)));
    },
    takesBeside: (boards, isSettled) => boards <= proven || keep(boards, isAskedBeside(any(), boards, { left: most }, isSettled)),
    hasJointsBeside: (joints) =>
      holdsOnRanges(any(), 'not searched', (rows) => rows.reduce((sum, { line }) => sum + line.joints, 0) >= joints),
  };
}

/** Whether something holds on all divisions, each in some range on which it holds. */
function holdsOnRanges(any: AnyRows, which: 'all' | 'not searched', holds: (rows: readonly RangedRow[]) => boolean): boolean {
  const open = allRanges(any, which, MOST_RANGES);
  if (open === undefined) return false;
  for (let looked = 0; open.length > 0; looked++) {
    const ranges = open.pop() as Ranges;
    if (holds(rangedRows(any, ranges))) continue;
    const halves = looked > MOST_RANGES ? undefined : halved(ranges);
    if (halves === undefined) return false;
    open.push(...halves);
  }
  return true;
}
