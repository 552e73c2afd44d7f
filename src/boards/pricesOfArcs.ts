import type { RowSort } from './rowSpace.js';

/** Per arc: the price of its piece by kind; nothing where no board is needed. */
export function pricesOfArcs({ kinds }: RowSort, ofKind: Float64Array): Float64Array {
  const arcs = new Float64Array(kinds.length);
  for (let arc = 0; arc < arcs.length; arc++) if (kinds[arc] >= 0) arcs[arc] = ofKind[kinds[arc]];
  return arcs;
}
