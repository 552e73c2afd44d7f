import { extentOnSheet } from './extentOnSheet.js';
import type { Box } from './label.js';
import type { PaperPoint } from './svg.js';

/** How wide the boxes of a slanting line are at the most, mm on paper. */
const WIDEST = 2;

/** A line as boxes: one where it is level or upright, short ones along it where it slants. */
export function segmentBoxes(a: PaperPoint, b: PaperPoint): Box[] {
  const parts = Math.max(1, Math.ceil(Math.min(Math.abs(b.x - a.x), Math.abs(b.y - a.y)) / WIDEST));
  const spot = (share: number): PaperPoint => ({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });
  return Array.from({ length: parts }, (_, k) => extentOnSheet([spot(k / parts), spot((k + 1) / parts)]));
}
