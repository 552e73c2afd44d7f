import { extentOnSheet } from './extentOnSheet.js';
import { joistSides } from './joistSides.js';
import type { Box } from './label.js';
import type { Sheet } from './sheet.js';
import type { Subject } from './subject.js';

/** The joists as upright or level boxes on the sheet, in short lengths so that one that is not parallel fits its boxes. */
export function joistBands({ plan }: Subject, sheet: Sheet): Box[] {
  return plan.joists.flatMap((joist) => {
    const { start, end } = joist;
    const lengths = start.x === end.x || start.y === end.y ? 1 : 12;
    const [[a, b], [c, d]] = joistSides(joist).map(([from, to]) => [sheet.place(from), sheet.place(to)] as const);
    const part = (share: number) =>
      [
        [a, b],
        [c, d],
      ].map(([from, to]) => ({ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }));
    return Array.from({ length: lengths }, (_, i) => extentOnSheet([...part(i / lengths), ...part((i + 1) / lengths)]));
  });
}
