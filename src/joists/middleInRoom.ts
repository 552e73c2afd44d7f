import { corners } from '../survey/outline.js';
import type { Room } from '../survey/room.js';
import type { Frame } from './frame.js';
import { stretchesIn } from './stretchesIn.js';

/**
 * The middle of the longest stretch, along the joists, of a line that is at this place across them; nothing where it does not run
 * in the room. Grid steps.
 */
export function middleInRoom({ outline }: Room, frame: Frame, u: number): number | undefined {
  const stretches = stretchesIn([corners(outline).map(frame.into)], () => u);
  const [first, ...others] = stretches;
  if (first === undefined) return undefined;
  const { from, to } = others.reduce(
    (longest, each) => (each.to - each.from > longest.to - longest.from ? each : longest),
    first,
  );
  return (from + to) / 2;
}
