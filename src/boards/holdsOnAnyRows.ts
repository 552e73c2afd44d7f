import { type AnyRows, anyRowsOf } from './anyRows.js';
import { askedByProgram } from './askedByProgram.js';
import { askedByWeights } from './askedByWeights.js';
import type { PlacementProblem } from './placementProblem.js';
import { rowFamilies } from './rowLayouts.js';
import { type RangedRow, type RowRange, rangedRows } from './rowRange.js';

/** Ranges of divisions that are looked at, and programmes that are solved for narrow ones, grid steps. */
const MOST_RANGES = 600;
const MOST_PROGRAMS = 24;
const NARROW = 150_000;
/** Where a programme does not tell enough of a range so narrow, halving it again would not help. */
const NARROWEST = 10_000;

/** Whether the divisions into rows that are searched are all that there are; else some rows between them are not. */
const areAllSearched = ({ parts, rowWidths }: PlacementProblem): boolean =>
  rowWidths !== undefined ||
  parts.some(({ standing }) => standing.up.length > 0) ||
  (parts.length === 1 && parts[0].clear === undefined);

/**
 * The most boards, up to so many, that every layout takes on whatever rows: full ones, and at most one ripped at each side.
 * Ranges of divisions are halved until what all divisions of a range have in common asks for enough.
 */
export function boardsOnAnyRows(problem: PlacementProblem, most: number): number {
  if (areAllSearched(problem) || !Number.isFinite(most)) return most;
  const any = anyRowsOf(problem);
  for (let boards = most; boards > 0; boards--) if (takesAsMany(any, boards)) return boards;
  return 0;
}

/** Whether every layout takes so many boards, on whatever rows. */
export const holdsOnAnyRows = (problem: PlacementProblem, boards: number): boolean =>
  boards <= 0 || areAllSearched(problem) || takesAsMany(anyRowsOf(problem), boards);

/** Whether every layout has so many butt joints, on whatever rows. */
export function jointsOnAnyRows(problem: PlacementProblem, joints: number): boolean {
  if (areAllSearched(problem)) return true;
  return holdsOnRanges(anyRowsOf(problem), (rows) => rows.reduce((sum, { line }) => sum + line.joints, 0) >= joints);
}

function takesAsMany(any: AnyRows, boards: number): boolean {
  let programs = 0;
  return holdsOnRanges(any, (rows, width) => {
    if (askedByWeights(any, rows, boards)) return true;
    return width <= NARROW && programs++ < MOST_PROGRAMS && askedByProgram(any.problem, rows, boards);
  });
}

/** Whether something holds on all divisions, each in some range on which it holds. */
function holdsOnRanges(any: AnyRows, holds: (rows: readonly RangedRow[], width: number) => boolean): boolean {
  const { problem } = any;
  let open: (readonly RowRange[])[] = [[]];
  for (const part of problem.parts.keys()) {
    // In one part each division that stands alone is searched.
    const families = rowFamilies(problem, part).filter(({ from, to }) => problem.parts.length > 1 || to > from);
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
