import type { Frame } from '../joists/frame.js';
import type { Source } from '../rules/source.js';
import type { Point } from '../survey/point.js';
import type { PieceFacts } from './ceiling.js';
import { onPlan } from './solid.js';

/** A place of the frame for a finding, mm on the plan, and in words. */
export function placeOf(frame: Frame, u: number, v: number): { readonly at: Point; readonly words: { readonly place: string } } {
  const at = onPlan(frame, u, v);
  return { at, words: { place: `${Math.round(at.x)}, ${Math.round(at.y)}` } };
}

/** The middle of a piece. */
export const middleOf = ({ frame, box }: PieceFacts) => placeOf(frame, (box.u0 + box.u1) / 2, (box.v0 + box.v1) / 2);

/** What needs no rule: two boards cannot be in one place, nor one board in a wall. */
export const geometry: Source = { standard: 'geometry of the layout', standing: 'derived' };

/** What follows from the sizes and numbers that the caller gave. */
export const asGiven: Source = { standard: 'arithmetic on the values given', standing: 'derived' };
