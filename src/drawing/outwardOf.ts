import type { Sheet } from './sheet.js';
import type { Subject } from './subject.js';
import type { PaperPoint } from './svg.js';

/** A wall on the sheet, and the direction out of the room, one mm long. */
export function outwardOf({ bounds }: Subject, index: number, sheet: Sheet) {
  const { from, to } = bounds[index];
  const [a, b] = [sheet.place(from), sheet.place(to)];
  const length = Math.sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y)) || 1;
  // Bounds have the room on their left on the plan; on the sheet y counts downward, and looking up mirrors it again.
  const turn = sheet.view === 'reflected' ? 1 : -1;
  const out: PaperPoint = { x: (-(b.y - a.y) / length) * turn, y: ((b.x - a.x) / length) * turn };
  return { from: a, to: b, length, out };
}
