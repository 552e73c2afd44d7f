import type { Point } from '../survey/point.js';
import type { Ring } from './overlayRings.js';

/** What lies on one side of a line: its rings, and the stretches of the line that border it. */
export interface Beside {
  readonly rings: readonly Ring[];
  /** In y, or in x on a level line; negative on a line that runs down, or to the left. */
  readonly along: readonly (readonly [from: number, to: number])[];
}

/** A chain of corners on the kept side, from where it leaves the line to where it comes back to it. */
interface Chain {
  readonly points: Point[];
  readonly from: number;
  readonly to: number;
}

/**
 * What of an area, rings anticlockwise about it and clockwise about its holes, lies on the left of the line from `a` to `b`. A corner
 * on the line counts as beyond it, so that an area that only touches the line leaves nothing. Crossings are rounded to the grid.
 */
export function beside(rings: readonly Ring[], a: Point, b: Point): Beside {
  const away = ({ x, y }: Point): number => (b.x - a.x) * (y - a.y) - (x - a.x) * (b.y - a.y);
  const along = ({ x, y }: Point): number => (a.y === b.y ? x * Math.sign(b.x - a.x) : y * Math.sign(b.y - a.y));
  const whole: Ring[] = [];
  const chains: Chain[] = [];
  for (const ring of rings) {
    const distances = ring.map(away);
    if (distances.every((distance) => distance > 0)) whole.push(ring);
    else chains.push(...chainsOf(ring, distances, along));
  }
  if (chains.length === 0) return { rings: whole, along: [] };
  // Along the line, what is kept begins where a chain comes back to it, and ends where the next one leaves it.
  const opening = chains.map((_, index) => index).sort((p, q) => chains[p].to - chains[q].to);
  const closing = chains.map((_, index) => index).sort((p, q) => chains[p].from - chains[q].from);
  const next: number[] = [];
  for (const [place, index] of opening.entries()) next[index] = closing[place];
  return {
    rings: [...whole, ...linked(chains, next)],
    along: opening
      .map((index, place) => [chains[index].to, chains[closing[place]].from] as const)
      .filter(([from, to]) => from < to),
  };
}

function chainsOf(ring: Ring, distances: readonly number[], along: (point: Point) => number): Chain[] {
  const count = ring.length;
  const chains: Chain[] = [];
  for (let start = 0; start < count; start++) {
    const before = (start + count - 1) % count;
    if (distances[start] <= 0 || distances[before] > 0) continue;
    const points = [crossing(ring[before], ring[start], distances[before], distances[start])];
    let at = start;
    while (distances[at] > 0) {
      points.push(ring[at]);
      at = (at + 1) % count;
    }
    const last = (at + count - 1) % count;
    points.push(crossing(ring[at], ring[last], distances[at], distances[last]));
    chains.push({ points, from: along(points[0]), to: along(points[points.length - 1]) });
  }
  return chains;
}

/** Where a side crosses the line; the same place from whichever end it is looked at. */
function crossing(p: Point, q: Point, ofP: number, ofQ: number): Point {
  if (ofP === 0) return p;
  if (q.x < p.x || (q.x === p.x && q.y < p.y)) return crossing(q, p, ofQ, ofP);
  const share = ofP / (ofP - ofQ);
  return { x: Math.round(p.x + (q.x - p.x) * share), y: Math.round(p.y + (q.y - p.y) * share) };
}

function linked(chains: readonly Chain[], next: readonly number[]): Ring[] {
  const taken = chains.map(() => false);
  const rings: Ring[] = [];
  for (let first = 0; first < chains.length; first++) {
    if (taken[first]) continue;
    const ring: Point[] = [];
    for (let at = first; !taken[at]; at = next[at]) {
      taken[at] = true;
      for (const point of chains[at].points) {
        const last = ring[ring.length - 1];
        if (last === undefined || last.x !== point.x || last.y !== point.y) ring.push(point);
      }
    }
    const [start, end] = [ring[0], ring[ring.length - 1]];
    if (ring.length > 1 && start.x === end.x && start.y === end.y) ring.pop();
    if (ring.length > 2) rings.push(ring);
  }
  return rings;
}
