import type { RangedRow } from './rowRange.js';
import type { Stock } from './stocksOf.js';

type Heights = Pick<RangedRow, 'heights'>;

/** What a row has of some slabs: its width where a range begins and where it ends, it goes evenly from one to the other. */
interface Strip {
  readonly atStart: number;
  readonly atEnd: number;
}

/** Sets of strips that are looked at, and strips of one. */
const MOST_SETS = 60_000;
const MOST_STRIPS = 60;
/** Narrower strips than that are not counted, grid steps. */
const THIN = 25_000;

/** Whether a strip counts. */
export const isCounted = (width: number): boolean => width >= THIN;

/** How far into a range of divisions something lies. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/**
 * Where in a range of divisions a board can be cut in the most ways: whatever can be cut side by side elsewhere in the range can be cut in
 * one of these stretches too, and within each it is all the same. It changes where strips that become wider just go beside each other
 * for the last time, or such that become narrower for the first, and where one of two strips becomes the wider. `before` and `after`
 * are the rows at the two ends of the range, which have part of the same slabs, and `far` is how far apart these are. Nothing where
 * there are too many sets of strips to look at.
 */
export function richestStretches(
  { stocks }: { readonly stocks: readonly Pick<Stock, 'width' | 'kerf'>[] },
  before: readonly Heights[],
  after: readonly Heights[],
  far: number,
): Stretch[] | undefined {
  const strips = stripsOf(before, after).filter(({ atStart, atEnd }) => isCounted(Math.max(atStart, atEnd)));
  const gains = new Set<number>();
  const losses = new Set<number>();
  const lose = (after: number): void => {
    if (after >= 0 && after < far) losses.add(after);
  };
  const gain = (at: number): void => {
    if (at > 0 && at <= far) gains.add(at);
  };
  for (const one of strips) {
    for (const other of strips) {
      const nearer = slopeOf(one, far) - slopeOf(other, far);
      if (nearer <= 0) continue;
      const even = (other.atStart - one.atStart) / nearer;
      lose(Math.floor(even));
      gain(Math.ceil(even));
    }
  }
  let sets = 0;
  for (const { width: board, kerf } of stocks) {
    const most = board + kerf;
    const addTo = (from: number, used: Strip, count: number): void => {
      const slope = slopeOf(used, far);
      if (slope > 0) lose(Math.floor((most - used.atStart) / slope));
      if (slope < 0) gain(Math.ceil((most - used.atStart) / slope));
      for (let at = from; at < strips.length && sets <= MOST_SETS; at++) {
        const { atStart, atEnd } = strips[at];
        const next = { atStart: used.atStart + atStart + kerf, atEnd: used.atEnd + atEnd + kerf };
        sets += count < MOST_STRIPS ? 1 : MOST_SETS + 1;
        if (Math.min(next.atStart, next.atEnd) <= most) addTo(at, next, count + 1);
      }
    };
    addTo(0, { atStart: 0, atEnd: 0 }, 0);
  }
  return sets > MOST_SETS ? undefined : betweenGainAndLoss(gains, losses, far);
}

/** From each last thing gained to the first that is lost after it. */
function betweenGainAndLoss(gains: ReadonlySet<number>, losses: ReadonlySet<number>, far: number): Stretch[] {
  const found: Stretch[] = [];
  let from: number | undefined = 0;
  for (const at of [...new Set([...gains, ...losses])].sort((a, b) => a - b)) {
    if (gains.has(at)) from = at;
    if (!losses.has(at) || from === undefined) continue;
    found.push({ from, to: at });
    from = undefined;
  }
  return from === undefined ? found : [...found, { from, to: far }];
}

/** Up to which width of the first row a strip counts or does not that is the other way beyond; `from` is where the range begins. */
export function lastAlike(before: readonly Heights[], after: readonly Heights[], from: number): number | undefined {
  const turning = stripsOf(before, after).find(({ atStart, atEnd }) => isCounted(atStart) !== isCounted(atEnd));
  if (turning === undefined) return undefined;
  return from + (isCounted(turning.atStart) ? turning.atStart - THIN : THIN - turning.atStart - 1);
}

/** Rows move with the first row or not at all: 1, 0 or -1 for a strip, a whole number for a set of them. */
const slopeOf = ({ atStart, atEnd }: Strip, far: number): number => (atEnd - atStart) / far;

function stripsOf(before: readonly Heights[], after: readonly Heights[]): Strip[] {
  const found = new Map<string, Strip>();
  for (const [row, { heights }] of before.entries()) {
    for (const [at, atStart] of heights.entries()) {
      const atEnd = after[row].heights[at];
      found.set(`${atStart} ${atEnd}`, { atStart, atEnd });
    }
  }
  return [...found.values()];
}
