import { isIn } from './bounds.js';
import { arrowBox } from './doubleArrow.js';
import { extentOnSheet } from './extentOnSheet.js';
import { joistBands } from './joistBands.js';
import { type Box, boxOf, grown, type Label, overlap } from './label.js';
import { LETTERS, shortened } from './lettering.js';
import type { Sheet } from './sheet.js';
import type { Subject } from './subject.js';
import type { PaperPoint } from './svg.js';

/** A zone's name on the sheet, and the mark of the way its joists run. */
export interface ZoneLabel {
  readonly label: Label;
  readonly arrow: PaperPoint;
  readonly upward: boolean;
  /** Both together. */
  readonly box: Box;
}

/** Names longer than this are cut; the room that is kept round name and mark; the step of the search; mm on paper. */
const WIDEST = 30;
const ROOM = 0.8;
const STEP = 1.5;
/** What it costs to cover a screw or the edge of a piece, and a joist. */
const COVERING = 1000;
const ON_JOIST = 4;

/** A name and a mark for each zone, at the place where they cover least, towards the upper edge so that pieces keep their middle. */
export function zoneLabels(subject: Subject, sheet: Sheet, taken: readonly Box[]): ZoneLabel[] {
  return subject.zones.map((zone) => {
    const { outline, holes = [] } = zone.rings;
    const rings = { outline: outline.map(sheet.place), holes: holes.map((hole) => hole.map(sheet.place)) };
    const upward = zone.direction === 'y';
    const text = shortened(zone.name, WIDEST, LETTERS.small, true);
    const at = (x: number, y: number): ZoneLabel => {
      const label = { text, height: LETTERS.small, anchor: 'middle', bold: true, x, y } as const;
      const name = boxOf(label);
      const arrow = upward ? { x: name.left - 3, y } : { x, y: name.bottom + 2.2 };
      return { label, arrow, upward, box: extentOnSheet([name, arrowBox(arrow, upward)].flatMap(cornersOf)) };
    };
    const outer = extentOnSheet(rings.outline);
    const joists = joistBands(zone, sheet);
    const cost = ({ box }: ZoneLabel): number => {
      const own = grown(box, ROOM);
      if (!cornersOf(own).every((corner) => isIn(rings, corner))) return Infinity;
      const hits = (boxes: readonly Box[]): number => boxes.filter((other) => overlap(own, other)).length;
      return hits(taken) * COVERING + hits(joists) * ON_JOIST + (box.top - outer.top) / 10;
    };
    let best = { place: at((outer.left + outer.right) / 2, (outer.top + outer.bottom) / 2), cost: Infinity };
    for (let y = outer.top + 3; y < outer.bottom; y += STEP) {
      for (let x = outer.left + 3; x < outer.right; x += STEP) {
        const place = at(x, y);
        const whole = cost(place);
        if (whole < best.cost) best = { place, cost: whole };
      }
    }
    return best.place;
  });
}

const cornersOf = ({ left, right, top, bottom }: Box): PaperPoint[] => [
  { x: left, y: top },
  { x: right, y: top },
  { x: right, y: bottom },
  { x: left, y: bottom },
];
