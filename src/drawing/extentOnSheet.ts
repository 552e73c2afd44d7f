import type { Box } from './label.js';
import type { PaperPoint } from './svg.js';

/** The least box that holds all points. */
export function extentOnSheet(points: readonly PaperPoint[]): Box {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}
