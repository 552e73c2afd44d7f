import type { JointLine } from './jointLines.js';
import type { Wall } from './laidCeiling.js';
import type { Near } from './nearestLines.js';
import { lineAt, stretchesAt } from './stretchesAt.js';

/**
 * How far a butt joint is from the wall of a window, across the joists, where it is nearer than the limit; nothing where the wall
 * does not run with the joists or does not see the joint.
 */
export function inLightOf(walls: readonly Wall[], edge: number, { from, to }: JointLine, limit: number): Near | undefined {
  const [a, b] = walls[edge];
  if (Math.abs(b.v - a.v) < Math.abs(b.u - a.u)) return undefined;
  const [low, high] = [Math.max(from.v, Math.min(a.v, b.v)), Math.min(to.v, Math.max(a.v, b.v))];
  if (low >= high) return undefined;
  const places = [low, high].map((v) => ({ u: lineAt(from, to, v), v }));
  const aways = places.map(({ u, v }) => Math.abs(u - lineAt(a, b, v)));
  const nearest = aways[0] <= aways[1] ? 0 : 1;
  if (aways[nearest] >= limit) return undefined;
  const middle = Math.round((low + high) / 2);
  const seen = [lineAt(a, b, middle), lineAt(from, to, middle)];
  const room = walls.map(([corner]) => corner);
  if (!stretchesAt(room, middle).some(([start, end]) => seen.every((u) => start <= u && u <= end))) return undefined;
  return { away: aways[nearest], place: places[nearest] };
}
