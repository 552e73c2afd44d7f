import { isWithin } from '../survey/isWithin.js';
import { extentOnSheet } from './extentOnSheet.js';
import type { PaperPoint } from './svg.js';

/** How many places are tried each way, and which share of the squared distance that can be had is enough. */
const TRIED = 24;
const ENOUGH = 0.8;

/**
 * Where lettering stands best in a ring on the sheet: in the middle of a rectangle, and otherwise farthest from all edges, a
 * distance along the lines of text counting half since lettering is wider than high.
 */
export function heartOf(ring: readonly PaperPoint[]): PaperPoint {
  const { left, right, top, bottom } = extentOnSheet(ring);
  const middle = { x: (left + right) / 2, y: (top + bottom) / 2 };
  const onExtent = ({ x, y }: PaperPoint): boolean => (x === left || x === right) && (y === top || y === bottom);
  if (ring.length === 4 && ring.every(onExtent)) return middle;
  const places = Array.from({ length: (TRIED + 1) ** 2 }, (_, i) => ({
    x: left + ((right - left) * (i % (TRIED + 1))) / TRIED,
    y: top + ((bottom - top) * Math.floor(i / (TRIED + 1))) / TRIED,
  }));
  const rated = places
    .filter((place) => isWithin(ring, place))
    .map((place) => ({ place, room: nearestEdge(ring, place), away: squared(place, middle) }));
  const most = Math.max(0, ...rated.map(({ room }) => room));
  // Among places that have nearly as much room the middlemost, so that a slightly raked piece is lettered like a square one.
  const good = rated.filter(({ room }) => room >= most * ENOUGH);
  return good.reduce((best, each) => (each.away < best.away ? each : best), good[0] ?? { place: middle, away: 0 }).place;
}

const squared = (a: PaperPoint, b: PaperPoint): number => ((a.x - b.x) / 2) ** 2 + (a.y - b.y) ** 2;

/** Square of the distance to the nearest edge. */
function nearestEdge(ring: readonly PaperPoint[], place: PaperPoint): number {
  const distances = ring.map((a, i) => {
    const b = ring[(i + 1) % ring.length];
    const whole = squared(a, b);
    const along = (((place.x - a.x) * (b.x - a.x)) / 4 + (place.y - a.y) * (b.y - a.y)) / (whole || 1);
    const share = Math.min(1, Math.max(0, along));
    return squared(place, { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });
  });
  return Math.min(...distances);
}
