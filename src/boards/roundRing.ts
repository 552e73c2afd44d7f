import { toGrid } from '../survey/grid.js';
import type { Point } from '../survey/point.js';
import type { Ring } from './overlayRings.js';

/** Corners of a quarter circle per square root of the radius in mm: straight sides stay within 1 mm of the circle. */
const FINENESS = 1;

/** A circle in mm as corners on the grid, anticlockwise. The corners lie on the circle: a hole is never drawn too large. */
export function roundRing({ x, y }: Point, diameter: number): Ring {
  const radius = diameter / 2;
  const steps = Math.max(3, Math.ceil(FINENESS * Math.sqrt(radius)));
  const quarter = Array.from({ length: steps }, (_, k) => {
    const t = k / steps;
    return { across: toGrid((radius * (1 - t * t)) / (1 + t * t)), up: toGrid((radius * 2 * t) / (1 + t * t)) };
  });
  const [cx, cy] = [toGrid(x), toGrid(y)];
  return [
    ...quarter.map(({ across, up }) => ({ x: cx + across, y: cy + up })),
    ...quarter.map(({ across, up }) => ({ x: cx - up, y: cy + across })),
    ...quarter.map(({ across, up }) => ({ x: cx - across, y: cy - up })),
    ...quarter.map(({ across, up }) => ({ x: cx + up, y: cy - across })),
  ];
}
