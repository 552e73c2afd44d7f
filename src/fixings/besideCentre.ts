import { toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';

/**
 * How far beside the middle of a joist its screws may go, the place to try first first; grid steps. Joists side by side are each
 * driven into in the middle, the middlemost first; a joist through lath and plaster beside the old nails, on one side or the other.
 */
export function besideCentre({ width, seams = [] }: Joist, offNails: number): number[] {
  if (seams.length === 0) return offNails === 0 ? [0] : [offNails, -offNails];
  const half = toGrid(width) / 2;
  const edges = [-half, ...seams.map(toGrid).sort((a, b) => a - b), half];
  return edges
    .slice(1)
    .map((edge, i) => Math.round((edges[i] + edge) / 2))
    .sort((a, b) => Math.abs(a) - Math.abs(b) || b - a);
}
