import { toGrid } from '../survey/grid.js';
import type { Subject } from './subject.js';

/** An edge that two rows share, on the grid: where it is along the joists, and from where to where it runs across them. */
export interface RowEdge {
  readonly at: number;
  readonly near: number;
  readonly far: number;
  /** The rows on its two sides. */
  readonly low: number;
  readonly high: number;
}

/** The edges that the rows of a part share, from its low side. */
export function rowEdges({ plan, frame }: Subject): RowEdge[] {
  const rows = [...plan.layout.rows].sort((a, b) => a.low - b.low);
  const corners = plan.layout.pieces.flatMap(({ outline }) =>
    outline.map(frame.into).map(({ u, v }) => ({ u: toGrid(u), v: toGrid(v) })),
  );
  return rows.slice(1).flatMap((row, i) => {
    const at = toGrid(row.low);
    const on = corners.filter(({ v }) => v === at).map(({ u }) => u);
    return on.length === 0 ? [] : [{ at, near: Math.min(...on), far: Math.max(...on), low: rows[i].row, high: row.row }];
  });
}
