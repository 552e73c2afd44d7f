import { blockedBy } from './jointConflicts.js';
import { leastBeside } from './leastBeside.js';
import { leastByPairs } from './leastByPairs.js';
import type { Relaxation } from './relaxation.js';
import type { RowPath } from './rowPath.js';
import type { RowSpace } from './rowSpace.js';
import type { WholePrices } from './wholePrices.js';

/** Rows of which some are fixed. */
export interface PartlyFixed {
  readonly space: RowSpace;
  readonly relaxation: Pick<Relaxation, 'fixed'>;
  /** Per row: its place in the order in which rows are fixed. */
  readonly places: readonly number[];
}

/** The path of a row, if it is fixed. */
const pathAt = ({ relaxation: { fixed }, places }: PartlyFixed, row: number): RowPath | undefined => fixed[places[row]];

/** The joists that the rows beside it keep a row off. */
export function blockedAt(rows: PartlyFixed, row: number): Int32Array | undefined {
  const { conflicts } = rows.space.set;
  const [below, above] = [pathAt(rows, row - 1), pathAt(rows, row + 1)];
  const fromBelow = below && blockedBy(conflicts[row - 1], below);
  const fromAbove = above && blockedBy(conflicts[row], above);
  if (fromBelow === undefined || fromAbove === undefined) return fromBelow ?? fromAbove;
  return fromBelow.map((bits, word) => bits | fromAbove[word]);
}

/** A row beside this one that is open. */
export const openBeside = (rows: PartlyFixed, row: number): number | undefined =>
  [row + 1, row - 1].find((beside) => beside in rows.places && pathAt(rows, beside) === undefined);

/** How much more the open rows, but for some at their side, come to when neighbouring ones are kept apart two by two. */
export function keptApart(rows: PartlyFixed, { arcs, least }: WholePrices, without: readonly (number | undefined)[]): number {
  const { space } = rows;
  const open = [...space.sorts.keys()].filter((row) => pathAt(rows, row) === undefined && !without.includes(row));
  const apart = leastByPairs(space, open, ({ group }) => arcs[group]);
  return apart === undefined ? 0 : Math.max(0, apart - open.reduce((sum, row) => sum + least[space.sorts[row].group], 0));
}

/** How much more an open row beside this one comes to next to joints on these joists. */
export function moreBeside(
  rows: PartlyFixed,
  row: number,
  { arcs, least }: WholePrices,
): ((joists: readonly number[]) => number) | undefined {
  const beside = openBeside(rows, row);
  if (beside === undefined) return undefined;
  const { graph, group } = rows.space.sorts[beside];
  const leastThere = leastBeside(graph, arcs[group], rows.space.set.conflicts[Math.min(row, beside)]);
  return (joists) => leastThere(joists) - least[group];
}
