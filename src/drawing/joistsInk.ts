import { type Ink, inkOn } from './ink.js';
import { DASHES, WIDTH } from './lineTypes.js';
import type { Sheet } from './sheet.js';
import type { Subject } from './subject.js';
import { line } from './svg.js';

/** Joists narrower than this on paper have no room for a centre line between their edges, mm. */
const ROOM_FOR_CENTRE = 1.2;

/** Joists hidden above the ceiling: a pair of dashed edges, and the centre line as it is chalked. */
export function joistsInk({ plan, frame }: Subject, sheet: Sheet): Ink[] {
  return plan.joists.flatMap((joist) => {
    const [start, end] = [frame.into(joist.start), frame.into(joist.end)];
    const edge = (by: number): string =>
      line(sheet.place(frame.back(start.u + by, start.v)), sheet.place(frame.back(end.u + by, end.v)), {
        'stroke-width': WIDTH.narrow,
        'stroke-dasharray': DASHES.dashed,
        'data-joist': joist.id,
      });
    const centre = line(sheet.place(joist.start), sheet.place(joist.end), {
      'stroke-width': WIDTH.narrow,
      'stroke-dasharray': DASHES.chain,
      'data-joist': joist.id,
    });
    return [
      ...inkOn('joist', [edge(-joist.width / 2), edge(joist.width / 2)]),
      ...(joist.width / sheet.scale >= ROOM_FOR_CENTRE ? inkOn('chalk', [centre]) : []),
    ];
  });
}
