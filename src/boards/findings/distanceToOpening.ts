import type { Frame, FramePoint } from '../../joists/frame.js';
import { toGrid } from '../../survey/grid.js';
import type { Opening } from '../../survey/room.js';
import { inFrame } from './laidCeiling.js';
import type { Near } from './nearestLines.js';
import { onLine, toPoint } from './onLine.js';
import { stretchesAt } from './stretchesAt.js';

interface Line {
  readonly from: FramePoint;
  readonly to: FramePoint;
}

/** How far a straight joint is from an opening, and the place of the joint that is nearest; grid steps, 0 where it runs into it. */
export function distanceToOpening(frame: Frame, opening: Opening, { from, to }: Line): Near {
  if (!('outline' in opening)) {
    const near = toPoint(inFrame(frame, opening.centre), from, to);
    return { ...near, away: Math.max(0, near.away - toGrid(opening.diameter / 2)) };
  }
  const ring = opening.outline.map((point) => inFrame(frame, point));
  const middle = { u: Math.round((from.u + to.u) / 2), v: Math.round((from.v + to.v) / 2) };
  const inside = [from, middle, to].find(({ u, v }) => stretchesAt(ring, v).some(([start, end]) => start <= u && u <= end));
  if (inside !== undefined) return { away: 0, place: inside };
  let nearest: Near = { away: Infinity, place: from };
  ring.forEach((a, i) => {
    const near = toSide(a, ring[(i + 1) % ring.length], from, to);
    if (near.away < nearest.away) nearest = near;
  });
  return nearest;
}

function toSide(a: FramePoint, b: FramePoint, from: FramePoint, to: FramePoint): Near {
  const [p, q, r, s] = [turn(from, to, a), turn(from, to, b), turn(a, b, from), turn(a, b, to)];
  if (p * q < 0 && r * s < 0) return { away: 0, place: onLine(a, from, to) };
  const ofEnds = [from, to].map((end) => ({ away: toPoint(end, a, b).away, place: end }));
  return [toPoint(a, from, to), toPoint(b, from, to), ...ofEnds].reduce((least, each) => (each.away < least.away ? each : least));
}

const turn = (a: FramePoint, b: FramePoint, c: FramePoint): number =>
  Math.sign((b.u - a.u) * (c.v - a.v) - (b.v - a.v) * (c.u - a.u));
