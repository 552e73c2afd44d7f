import type { Joist } from '../survey/joist.js';
import type { Point } from '../survey/point.js';

/** The two sides of a timber as it lies over the ceiling, each half its width beside the centre line. */
export function joistSides({ start, end, width }: Joist): readonly [readonly [Point, Point], readonly [Point, Point]] {
  const run = { x: end.x - start.x, y: end.y - start.y };
  const length = Math.sqrt(run.x * run.x + run.y * run.y);
  const half = length === 0 ? 0 : width / 2 / length;
  const beside = ({ x, y }: Point, way: 1 | -1): Point => ({ x: x - run.y * half * way, y: y + run.x * half * way });
  return [
    [beside(start, 1), beside(end, 1)],
    [beside(start, -1), beside(end, -1)],
  ];
}
