import type { FramePoint } from '../../joists/frame.js';
import type { JointLine } from './jointLines.js';
import type { Near } from './nearestLines.js';
import { lineAt } from './stretchesAt.js';
import { turnedAbout } from './wallsFaced.js';

/** An old joint, from end to end. */
export type OldJoint = readonly [FramePoint, FramePoint];

/** The old joint that a new one is nearest to, of those nearer than the limit that run the same way. */
export function besideOldJoint(old: readonly OldJoint[], line: JointLine, limit: number): Near | undefined {
  let nearest: Near | undefined;
  for (const joint of old) {
    const near = beside(line, joint, limit);
    if (near !== undefined && near.away < Math.min(limit, nearest?.away ?? limit)) nearest = near;
  }
  return nearest;
}

/**
 * How far apart a new joint and an old one are that run the same way; nothing where they run across each other or past each other.
 * A butt joint is beside an old one as long as the ends of the two are nearer than the limit: on the same joist they would make
 * one line.
 */
function beside({ kind, from, to }: JointLine, old: OldJoint, limit: number): Near | undefined {
  const turn = kind === 'butt joint' ? (corner: FramePoint): FramePoint => corner : turnedAbout;
  const [p, q, r, s] = [from, to, ...old].map(turn);
  if (r.v === s.v || Math.abs(s.v - r.v) < Math.abs(s.u - r.u)) return undefined;
  const reach = kind === 'butt joint' ? limit : 0;
  const [least, greatest] = [Math.min(r.v, s.v), Math.max(r.v, s.v)];
  const [low, high] = [Math.max(p.v, least - reach), Math.min(q.v, greatest + reach)];
  if (low >= high) return undefined;
  const within = (v: number): number => Math.max(least, Math.min(greatest, v));
  const apart = [low, high].map((v) => lineAt(p, q, v) - lineAt(r, s, within(v)));
  const nearest = Math.abs(apart[0]) <= Math.abs(apart[1]) ? 0 : 1;
  const v = [low, high][nearest];
  const away = apart[0] < 0 === apart[1] < 0 ? Math.abs(apart[nearest]) : 0;
  return { away, place: turn({ u: lineAt(p, q, v), v }) };
}
