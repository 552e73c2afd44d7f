import { stretchesAt } from '../boards/findings/stretchesAt.js';
import type { FramePoint } from '../joists/frame.js';

/** The longest straight way across an area, grid steps: from where to where, and at which level. */
export interface LongestRun {
  readonly from: number;
  readonly to: number;
  readonly level: number;
}

/** The longest stretch of an area along `u`. It lies at a corner's level, or just beside it where the side there is level. */
export function longestRun(rings: readonly (readonly FramePoint[])[]): LongestRun {
  const levels = [...new Set(rings.flat().map(({ v }) => v))];
  const runs = levels
    .flatMap((level) => [level - 1, level, level + 1])
    .flatMap((level) => stretchesIn(rings, level).map(([from, to]): LongestRun => ({ from, to, level })));
  return runs.reduce((longest, run) => (run.to - run.from > longest.to - longest.from ? run : longest));
}

/** Stretches of the outline less those of its holes, which lie wholly in it. */
function stretchesIn([outline, ...holes]: readonly (readonly FramePoint[])[], level: number): (readonly [number, number])[] {
  const ends = [outline, ...holes].flatMap((ring) => stretchesAt(ring, level).flat()).sort((a, b) => a - b);
  return ends.flatMap((from, i) => (i % 2 === 0 ? [[from, ends[i + 1]] as const] : []));
}
