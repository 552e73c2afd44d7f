import type { Opening } from '../survey/room.js';
import { type Ink, inkOn } from './ink.js';
import type { Box } from './label.js';
import { WIDTH } from './lineTypes.js';
import { openingExtent, openingName } from './pieceOpenings.js';
import type { Sheet } from './sheet.js';
import type { Subject } from './subject.js';
import { circle, line, type PaperPoint, polygon } from './svg.js';

/** An opening with its name and its place on the sheet. */
export interface NamedOpening {
  readonly opening: Opening;
  readonly name: string;
  readonly box: Box;
}

export function namedOpenings(subject: Subject, sheet: Sheet): NamedOpening[] {
  return (subject.plan.room.openings ?? []).map((opening, index) => {
    const { left, right, low, high } = openingExtent(opening);
    const [a, b] = [sheet.place({ x: left, y: high }), sheet.place({ x: right, y: low })];
    return {
      opening,
      name: openingName(subject, opening, index),
      box: { left: Math.min(a.x, b.x), right: Math.max(a.x, b.x), top: a.y, bottom: b.y },
    };
  });
}

/** How far the centre lines of a small round opening stand out of it, mm on paper. */
const STANDING_OUT = 1.2;

/** Openings: their outline, with a diagonal cross; nothing of what lies above shows in them. */
export function openingsInk(openings: readonly NamedOpening[], sheet: Sheet): Ink[] {
  return inkOn(
    'opening',
    openings.flatMap(({ opening, box }) => {
      const fine = { 'stroke-width': WIDTH.narrow };
      const edge = { 'stroke-width': WIDTH.wide, fill: '#fff', 'data-opening': opening.id };
      if ('diameter' in opening) {
        const radius = (box.right - box.left) / 2;
        const centre = { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
        const reach = (radius + STANDING_OUT) * Math.SQRT1_2;
        return [circle(centre, radius, edge), ...crossed(centre, reach, reach, fine)];
      }
      const centre = { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
      const across = crossed(centre, (box.right - box.left) / 2, (box.bottom - box.top) / 2, fine);
      return [polygon(opening.outline.map(sheet.place), edge), ...across];
    }),
  );
}

const crossed = ({ x, y }: PaperPoint, across: number, down: number, attributes: { 'stroke-width': number }): string[] => [
  line({ x: x - across, y: y - down }, { x: x + across, y: y + down }, attributes),
  line({ x: x - across, y: y + down }, { x: x + across, y: y - down }, attributes),
];
