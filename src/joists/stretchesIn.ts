import type { FramePoint } from './frame.js';

/** A stretch along a joist, grid steps. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** A straight line along the joists: where it is across them at a distance along them, whole grid steps. */
type Line = (v: number) => number;

interface Side {
  readonly a: FramePoint;
  readonly b: FramePoint;
  /** On which side of the line its two corners are: -1, 0 (on it) or 1. */
  readonly ofA: number;
  readonly ofB: number;
  /** Where it crosses or meets the line. */
  readonly meets: number | undefined;
}

/**
 * The stretches of a line that lie in an area, its border included: a line along a wall is in the room. A corner that is only
 * touched is no stretch.
 *
 * @param rings - the area's outline and its holes, grid points, in any winding
 */
export function stretchesIn(rings: readonly (readonly FramePoint[])[], line: Line): Stretch[] {
  const sides = rings.flatMap((ring) => ring.map((a, i) => sideOf(a, ring[(i + 1) % ring.length], line)));
  const levels = [
    ...new Set(
      sides.flatMap(({ a, b, ofA, ofB, meets }) =>
        [...(ofA === 0 ? [a.v] : []), ...(ofB === 0 ? [b.v] : []), meets ?? []].flat(),
      ),
    ),
  ].sort((p, q) => p - q);
  const stretches: { from: number; to: number }[] = [];
  for (let i = 1; i < levels.length; i++) {
    const [from, to] = [levels[i - 1], levels[i]];
    if (!isIn(sides, from, to)) continue;
    const last = stretches[stretches.length - 1];
    if (last?.to === from) last.to = to;
    else stretches.push({ from, to });
  }
  return stretches;
}

function sideOf(a: FramePoint, b: FramePoint, line: Line): Side {
  const [awayA, awayB] = [a.u - line(a.v), b.u - line(b.v)];
  const [ofA, ofB] = [Math.sign(awayA), Math.sign(awayB)];
  const meets = ofA * ofB < 0 ? Math.round(a.v + ((b.v - a.v) * awayA) / (awayA - awayB)) : undefined;
  return { a, b, ofA, ofB, meets };
}

/** Whether a stretch that no side crosses is in the area: along a side, or with an odd number of sides beyond it. */
function isIn(sides: readonly Side[], from: number, to: number): boolean {
  let beyond = 0;
  for (const { a, b, ofA, ofB, meets } of sides) {
    const [low, high] = a.v <= b.v ? [a.v, b.v] : [b.v, a.v];
    // Two levels next to each other have no whole one between them: the stretch stands for its own middle.
    if (2 * low > from + to || 2 * high <= from + to) continue;
    if (ofA === 0 && ofB === 0) return true;
    const [ofLow, ofHigh] = a.v <= b.v ? [ofA, ofB] : [ofB, ofA];
    const of = meets === undefined ? ofLow + ofHigh : meets <= from ? ofHigh : ofLow;
    if (of > 0) beyond++;
  }
  return beyond % 2 === 1;
}
