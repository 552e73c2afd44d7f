import { toGrid } from '../survey/grid.js';
import { InputError, problem } from '../survey/inputError.js';
import { distanceTo, isWithin } from '../survey/isWithin.js';
import type { Mark } from '../survey/mark.js';
import { corners } from '../survey/outline.js';
import type { Room } from '../survey/room.js';

/** How far outside the outline a mark may be, mm: tapes and drawn outlines do not agree to the millimetre. */
const OUTSIDE = 50;

/**
 * Refuses marks that are too far outside the room.
 *
 * @throws InputError with a problem for each of them
 */
export function demandMarksInRoom(room: Room, marks: readonly Mark[], path: string): void {
  const ring = corners(room.outline);
  const problems = marks.flatMap((mark, index) => {
    const at = { x: toGrid(mark.x), y: toGrid(mark.y) };
    if (isWithin(ring, at) || distanceTo(ring, at) <= toGrid(OUTSIDE)) return [];
    const expected = `a place within the room, or up to ${OUTSIDE} mm outside it`;
    return [problem('mark-outside-room', `${path}marks[${index}]`, expected, `${mark.x}, ${mark.y}`)];
  });
  if (problems.length > 0) throw new InputError(problems);
}
