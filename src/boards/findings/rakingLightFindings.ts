import type { Finding } from '../../rules/finding.js';
import { givenRule } from './givenRule.js';
import { buttLines, type JointLine } from './jointLines.js';
import type { LaidCeiling, LaidPart } from './laidCeiling.js';
import { type Near, nearestLines } from './nearestLines.js';
import { lineAt, stretchesAt } from './stretchesAt.js';
import { tellNear } from './tellNear.js';

/** Butt joints that the light from a window rakes along: nearer to its wall, which runs with them, than they should be. */
export function rakingLightFindings({ set, room, parts }: LaidCeiling): Finding[] {
  const windows = (room.walls ?? []).filter(({ window }) => window);
  if (windows.length === 0) return [];
  const rule = givenRule(set, 'light.jointDistance');
  return parts.flatMap((part) => {
    const lines = buttLines(part);
    return windows.flatMap(({ edge }) =>
      nearestLines(lines, (line) => inLightOf(part, edge, line, rule.steps)).map((near) =>
        tellNear('raking-light', part.frame, near, rule, { wall: edge }),
      ),
    );
  });
}

/** How far a joint is from a wall that runs with the joists, across them; nothing where the wall does not see it. */
function inLightOf({ walls }: LaidPart, edge: number, { from, to }: JointLine, limit: number): Near | undefined {
  const [a, b] = walls[edge];
  if (Math.abs(b.v - a.v) < Math.abs(b.u - a.u)) return undefined;
  const [low, high] = [Math.max(from.v, Math.min(a.v, b.v)), Math.min(to.v, Math.max(a.v, b.v))];
  if (low >= high) return undefined;
  const middle = Math.round((low + high) / 2);
  const seen = [lineAt(a, b, middle), lineAt(from, to, middle)];
  const ring = walls.map(([corner]) => corner);
  if (!stretchesAt(ring, middle).some(([start, end]) => seen.every((u) => start <= u && u <= end))) return undefined;
  const places = [low, high].map((v) => ({ u: lineAt(from, to, v), v }));
  const aways = places.map(({ u, v }) => Math.abs(u - lineAt(a, b, v)));
  const nearest = aways[0] <= aways[1] ? 0 : 1;
  return aways[nearest] < limit ? { away: aways[nearest], place: places[nearest] } : undefined;
}
