import type { FramePoint } from '../../joists/frame.js';
import type { Near } from './nearestLines.js';

/** How far a point is from a line, from end to end; grid steps. */
export function toPoint(point: FramePoint, from: FramePoint, to: FramePoint): Near {
  const place = onLine(point, from, to);
  const [du, dv] = [point.u - place.u, point.v - place.v];
  return { away: Math.round(Math.sqrt(du * du + dv * dv)), place };
}

/** The place of a line from end to end that is nearest to a point. */
export function onLine({ u, v }: FramePoint, from: FramePoint, to: FramePoint): FramePoint {
  const [du, dv] = [to.u - from.u, to.v - from.v];
  const share = ((u - from.u) * du + (v - from.v) * dv) / (du * du + dv * dv);
  const along = Math.max(0, Math.min(1, share));
  return { u: Math.round(from.u + along * du), v: Math.round(from.v + along * dv) };
}
