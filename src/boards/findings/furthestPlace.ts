import type { FramePoint } from '../../joists/frame.js';
import type { Joist } from '../../survey/joist.js';
import { toPoint } from './onLine.js';

/** The centre line of a timber, from end to end; grid steps. */
export interface Timber {
  readonly joist: Joist;
  readonly from: FramePoint;
  readonly to: FramePoint;
}

/** A place, and how far it is from the timber nearest to it; grid steps. */
export interface Reach {
  readonly place: FramePoint;
  readonly timber: Timber;
  readonly away: number;
}

/** The place of a line that is furthest from all timbers; nothing where there are none. */
export function furthestPlace(timbers: readonly Timber[], from: FramePoint, to: FramePoint): Reach | undefined {
  if (timbers.length === 0) return undefined;
  return furthestBetween(timbers, reachAt(timbers, from), reachAt(timbers, to));
}

/** A line is furthest from one timber at one of its ends, so that only where the nearest timber changes is there more between them. */
function furthestBetween(timbers: readonly Timber[], first: Reach, last: Reach): Reach {
  const [du, dv] = [last.place.u - first.place.u, last.place.v - first.place.v];
  const atEnds = further(first, last);
  if (first.timber.joist === last.timber.joist || Math.max(Math.abs(du), Math.abs(dv)) <= 1) return atEnds;
  const middle = reachAt(timbers, { u: first.place.u + Math.round(du / 2), v: first.place.v + Math.round(dv / 2) });
  return [furthestBetween(timbers, first, middle), furthestBetween(timbers, middle, last)].reduce(further, atEnds);
}

const further = (a: Reach, b: Reach): Reach => (b.away > a.away ? b : a);

const reachAt = (timbers: readonly Timber[], place: FramePoint): Reach =>
  timbers
    .map((timber) => ({ place, timber, away: toPoint(place, timber.from, timber.to).away }))
    .reduce((nearest, each) => (each.away < nearest.away ? each : nearest));
