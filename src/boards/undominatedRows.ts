import type { PlacementProblem } from './placementProblem.js';
import type { RowLayout } from './rowLayouts.js';

/**
 * Leaves out divisions into rows that another one, of as many rows, serves at least as well: what lies side by side on a board
 * in the one does so in the other, and no more of its rows are narrow. Only where all boards are of one width and all rows can
 * be divided alike; any other division is kept.
 */
export function undominatedRows(problem: PlacementProblem, layouts: readonly RowLayout[]): RowLayout[] {
  const [{ width, kerf }] = problem.stocks;
  const alike = problem.parts.length === 1 && problem.parts[0].parallel && problem.parts[0].clear === undefined;
  if (!alike || problem.stocks.some((stock) => stock.width !== width || stock.kerf !== kerf)) return [...layouts];
  const judged = layouts.map((layout) => {
    const widths = layout.bands.map((band) => band.width).sort((a, b) => a - b);
    const [narrow = width, wide = width] = widths;
    return {
      layout,
      rows: widths.length,
      beside: sideBySide(wide + kerf, narrow + kerf, width + kerf),
      narrowRows: widths.filter((each) => each < problem.rules.preferredRowWidth).length,
      ripped: widths.filter((each) => each < width).length,
      narrow,
    };
  });
  type Judged = (typeof judged)[number];
  const atLeastAsGood = (a: Judged, b: Judged): boolean =>
    a.rows === b.rows && a.narrowRows <= b.narrowRows && b.beside.every((most, count) => (a.beside[count] ?? -1) >= most);
  const comesFirst = (a: Judged, b: Judged): boolean =>
    a.ripped === b.ripped
      ? a.narrow === b.narrow
        ? judged.indexOf(a) < judged.indexOf(b)
        : a.narrow > b.narrow
      : a.ripped < b.ripped;
  return judged
    .filter(
      (each) =>
        !judged.some(
          (other) => other !== each && atLeastAsGood(other, each) && (!atLeastAsGood(each, other) || comesFirst(other, each)),
        ),
    )
    .map(({ layout }) => layout);
}

/** Per number of wide strips on a board: the most narrow ones beside them. Each with its cut. */
function sideBySide(wide: number, narrow: number, board: number): number[] {
  const most: number[] = [];
  for (let count = 0; count * wide <= board; count++) most.push(Math.floor((board - count * wide) / narrow));
  return most;
}
