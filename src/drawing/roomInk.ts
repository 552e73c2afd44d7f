import { type Ink, inkOn } from './ink.js';
import { WIDTH } from './lineTypes.js';
import { outwardOf } from './outwardOf.js';
import type { Sheet } from './sheet.js';
import type { Subject } from './subject.js';
import { line, type PaperPoint, polygon } from './svg.js';

/** The share of a wall over which its window is drawn: where in the wall it is, nobody measured. */
const WINDOW = { from: 0.25, to: 0.75 } as const;

/** The outline of the room. The line lies outside it, so that its inner edge is the measured wall; walls with a window show it. */
export function roomInk(subject: Subject, sheet: Sheet): Ink[] {
  const { plan, walls } = subject;
  const ring = plan.room.outline.map(sheet.place);
  const windows = walls.flatMap((wall, i) => (wall.window ? windowSvg(subject, i, sheet) : []));
  return inkOn('wall', [
    polygon(ring, { 'stroke-width': 2 * WIDTH.wall, 'stroke-linejoin': 'miter' }),
    polygon(ring, { fill: '#fff', stroke: 'none' }),
    ...windows,
  ]);
}

function windowSvg(subject: Subject, index: number, sheet: Sheet): string[] {
  const { from, to, out } = outwardOf(subject, index, sheet);
  const spot = (share: number, away: number): PaperPoint => ({
    x: from.x + (to.x - from.x) * share + out.x * away,
    y: from.y + (to.y - from.y) * share + out.y * away,
  });
  const level = (away: number): [PaperPoint, PaperPoint] => [spot(WINDOW.from, away), spot(WINDOW.to, away)];
  const [inner, outer] = [level(0), level(WIDTH.wall)];
  const narrow = { 'stroke-width': WIDTH.narrow, 'data-window': subject.walls[index].letter };
  return [polygon([inner[0], inner[1], outer[1], outer[0]], { ...narrow, fill: '#fff' }), line(...level(WIDTH.wall / 2), narrow)];
}
