import { fromGrid, toGrid } from '../survey/grid.js';
import { InputError, problem } from '../survey/inputError.js';
import type { Mark } from '../survey/mark.js';
import { corners } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
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

/** Whether a grid point is inside a ring of grid points: a ray along x crosses its sides an odd number of times. */
export function isWithin(ring: readonly Point[], { x, y }: Point): boolean {
  let inside = false;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length];
    if (a.y > y === b.y > y) return;
    const side = (b.x - a.x) * (y - a.y) - (x - a.x) * (b.y - a.y);
    if (side > 0 === b.y > a.y) inside = !inside;
  });
  return inside;
}

/** Distance from a grid point to the nearest side of a ring, whole grid steps upwards. */
export function distanceTo(ring: readonly Point[], point: Point): number {
  let least = Infinity;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length];
    const [dx, dy] = [fromGrid(b.x - a.x), fromGrid(b.y - a.y)];
    const [px, py] = [fromGrid(point.x - a.x), fromGrid(point.y - a.y)];
    const along = Math.min(1, Math.max(0, (px * dx + py * dy) / (dx * dx + dy * dy)));
    const [ox, oy] = [px - along * dx, py - along * dy];
    least = Math.min(least, ox * ox + oy * oy);
  });
  return toGrid(Math.sqrt(least));
}
