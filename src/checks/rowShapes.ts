import type { Box } from './solid.js';

/** A band of pieces side by side, in the frame; grid steps. Rows are numbered from 1 at the low wall. */
export interface RowShape {
  readonly row: number;
  readonly low: number;
  readonly high: number;
  readonly pieces: readonly number[];
}

/**
 * Pieces that share more than half of the narrower one's width lie in one row: a piece pushed out of line still belongs to its
 * row, and a narrow piece in an alcove to the row that it continues.
 */
export function rowsOf(boxes: readonly Box[]): RowShape[] {
  const order = boxes.map((_, index) => index).sort((a, b) => boxes[a].v0 - boxes[b].v0 || boxes[a].u0 - boxes[b].u0);
  const rows: { low: number; high: number; pieces: number[] }[] = [];
  for (const index of order) {
    const box = boxes[index];
    const row = rows.find(({ pieces }) => pieces.some((other) => inOneRow(box, boxes[other])));
    if (row === undefined) rows.push({ low: box.v0, high: box.v1, pieces: [index] });
    else {
      row.low = Math.min(row.low, box.v0);
      row.high = Math.max(row.high, box.v1);
      row.pieces.push(index);
    }
  }
  return rows.sort((a, b) => a.low + a.high - b.low - b.high).map((row, i) => ({ row: i + 1, ...row }));
}

const inOneRow = (a: Box, b: Box): boolean =>
  2 * (Math.min(a.v1, b.v1) - Math.max(a.v0, b.v0)) > Math.min(a.v1 - a.v0, b.v1 - b.v0);
