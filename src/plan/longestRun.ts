import { stretchesAt } from '../boards/findings/stretchesAt.js';
import type { FramePoint } from '../joists/frame.js';
import { fromGrid, toGrid } from '../survey/grid.js';

type Rings = readonly (readonly FramePoint[])[];

/** The longest straight way across an area, grid steps: from where to where, and at which level. */
export interface LongestRun {
  readonly from: number;
  readonly to: number;
  readonly level: number;
}

/**
 * The longest stretch of an area along `u`: just above or below some corner. Where it is as long from one level to another it is
 * told half way between, at a whole mm; else at the level of its corner.
 */
export function longestRun(rings: Rings): LongestRun {
  const levels = [...new Set(rings.flat().map(({ v }) => v))].sort((a, b) => a - b);
  const upsideDown = rings.map((ring) => ring.map(({ u, v }) => ({ u, v: -v })));
  const runs = levels.flatMap((level) =>
    [...stretchesIn(rings, level), ...stretchesIn(upsideDown, -level)].map(([from, to]): LongestRun => ({ from, to, level })),
  );
  const longest = runs.reduce((best, run) => (run.to - run.from > best.to - best.from ? run : best));
  const alike = runs.filter(({ from, to }) => from === longest.from && to === longest.to);
  const middle = (longest.level + alike[alike.length - 1].level) / 2;
  const level = toGrid(Math.round(fromGrid(middle)));
  const goesOn = stretchesIn(rings, level).some(([from, to]) => from === longest.from && to === longest.to);
  return goesOn ? { ...longest, level } : longest;
}

/** Stretches of the outline less those of its holes, which lie wholly in it; just below the level where corners are on it. */
function stretchesIn([outline, ...holes]: Rings, level: number): (readonly [number, number])[] {
  const ends = [outline, ...holes].flatMap((ring) => stretchesAt(ring, level).flat()).sort((a, b) => a - b);
  return ends.flatMap((from, i) => (i % 2 === 0 ? [[from, ends[i + 1]] as const] : []));
}
