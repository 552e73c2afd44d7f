import type { Frame, FramePoint } from '../../joists/frame.js';
import { toGrid } from '../../survey/grid.js';
import type { Opening } from '../../survey/room.js';
import type { JointLine } from './jointLines.js';
import { inFrame } from './laidCeiling.js';
import type { Near } from './nearestLines.js';
import { lineAt } from './stretchesAt.js';
import { turnedAbout } from './wallsFaced.js';

/** How far a joint is from the line of a corner of a hatch, where it is nearer than the limit and reaches to within it of the corner. */
export function besideHatchCorner(frame: Frame, hatch: Opening, { kind, from, to }: JointLine, limit: number): Near | undefined {
  const turn = kind === 'butt joint' ? (corner: FramePoint): FramePoint => corner : turnedAbout;
  const [p, q] = [from, to].map(turn);
  let nearest: Near | undefined;
  for (const given of cornersOf(frame, hatch)) {
    const corner = turn(given);
    const level = Math.max(p.v, Math.min(q.v, corner.v));
    const away = Math.abs(lineAt(p, q, corner.v) - corner.u);
    if (Math.abs(level - corner.v) >= limit || away >= Math.min(limit, nearest?.away ?? limit)) continue;
    nearest = { away, place: given };
  }
  return nearest;
}

/** Of a round hatch, those of the square about it. */
function cornersOf(frame: Frame, opening: Opening): FramePoint[] {
  if ('outline' in opening) return opening.outline.map((point) => inFrame(frame, point));
  const { u, v } = inFrame(frame, opening.centre);
  const half = toGrid(opening.diameter / 2);
  return [-half, half].flatMap((du) => [-half, half].map((dv) => ({ u: u + du, v: v + dv })));
}
