import { fromGrid, toGrid } from '../survey/grid.js';
import type { Layer } from '../survey/layer.js';

/**
 * What the old ceiling may measure where nobody has probed it, mm: what was given, up to its tolerance, or, where nothing was,
 * from the thinnest usual board (EN 520) to lath of 8 and plaster of 25 (local authority guidance on lath and plaster).
 */
export function unprobedThickness(lining: readonly (Layer | number)[]): { readonly least: number; readonly greatest: number } {
  if (lining.length === 0) return { least: 9.5, greatest: 33 };
  let [least, greatest] = [0, 0];
  for (const layer of lining) {
    const { thickness, tolerance = 0 } = typeof layer === 'number' ? { thickness: layer } : layer;
    least += toGrid(thickness);
    greatest += toGrid(thickness) + toGrid(tolerance);
  }
  return { least: fromGrid(least), greatest: fromGrid(greatest) };
}
