import type { GridPoint } from './solid.js';

export interface Segment {
  readonly from: GridPoint;
  readonly to: GridPoint;
}

/** Distance of a place from a segment, to the nearest grid step. */
export function distance(point: GridPoint, { from, to }: Segment): number {
  const [du, dv] = [to.u - from.u, to.v - from.v];
  const [pu, pv] = [point.u - from.u, point.v - from.v];
  const squared = du * du + dv * dv;
  const share = Math.max(0, Math.min(1, squared === 0 ? 0 : (du * pu + dv * pv) / squared));
  const [eu, ev] = [pu - share * du, pv - share * dv];
  return Math.round(Math.sqrt(eu * eu + ev * ev));
}
