import { directionOf, type Frame } from '../joists/frame.js';
import type { Joist } from '../survey/joist.js';

/** The longest bay between neighbouring joists, mm; 0 with one joist alone, so that the first row of a table serves. */
export function widestBay(joists: readonly Joist[], frame: Frame): number {
  const centres = joists
    .filter((joist) => directionOf([joist]) === frame.direction)
    .map(({ start, end }) => (frame.into(start).u + frame.into(end).u) / 2)
    .sort((a, b) => a - b);
  return centres.reduce((widest, centre, i) => (i === 0 ? 0 : Math.max(widest, centre - centres[i - 1])), 0);
}
