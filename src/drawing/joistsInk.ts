import { type Ink, inkOn } from './ink.js';
import { joistSides } from './joistSides.js';
import { DASHES, WIDTH } from './lineTypes.js';
import type { Sheet } from './sheet.js';
import type { Subject } from './subject.js';
import { line } from './svg.js';

/** Joists narrower than this on paper have no room for a centre line between their edges, mm. */
const ROOM_FOR_CENTRE = 1.2;

/** Joists hidden above the ceiling: a pair of dashed edges, and the centre line as it is chalked. */
export function joistsInk({ plan }: Subject, sheet: Sheet): Ink[] {
  return plan.joists.flatMap((joist) => {
    const drawn = (dashes: string) => ({ 'stroke-width': WIDTH.narrow, 'stroke-dasharray': dashes, 'data-joist': joist.id });
    const sides = joistSides(joist).map(([from, to]) => line(sheet.place(from), sheet.place(to), drawn(DASHES.dashed)));
    const centre = line(sheet.place(joist.start), sheet.place(joist.end), drawn(DASHES.chain));
    return [...inkOn('joist', sides), ...(joist.width / sheet.scale >= ROOM_FOR_CENTRE ? inkOn('chalk', [centre]) : [])];
  });
}
