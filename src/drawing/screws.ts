import { type Ink, inkOn } from './ink.js';
import type { Sheet } from './sheet.js';
import { isUp } from './stillToFix.js';
import type { Subject } from './subject.js';
import { circle, type PaperPoint } from './svg.js';

/** Radius of a screw's mark on paper, mm. */
export const screwRadius = (scale: number): number => (scale <= 25 ? 0.45 : 0.35);
/** A mark stands at least this far inside its piece on paper, mm: two screws either side of a joint would be one blot. */
const INSIDE = 0.8;

/** Where the marks of the screws that are still to be driven stand on the sheet. */
export function screwMarks({ plan }: Subject, sheet: Sheet): PaperPoint[] {
  const limits = new Map(
    plan.layout.pieces.map((piece) => {
      const ring = piece.outline.map(sheet.place);
      const [xs, ys] = [ring.map(({ x }) => x), ring.map(({ y }) => y)];
      return [piece.id, { x: [Math.min(...xs), Math.max(...xs)], y: [Math.min(...ys), Math.max(...ys)] }];
    }),
  );
  const up = new Set(plan.layout.pieces.filter(isUp).map(({ id }) => id));
  return plan.fixings.positions.flatMap((position) => {
    if (up.has(position.piece)) return [];
    const at = sheet.place(position);
    const limit = limits.get(position.piece);
    return [limit === undefined ? at : { x: inside(at.x, limit.x), y: inside(at.y, limit.y) }];
  });
}

function inside(value: number, [low, high]: readonly number[]): number {
  return high - low < 2 * INSIDE ? (low + high) / 2 : Math.min(Math.max(value, low + INSIDE), high - INSIDE);
}

export const screwsInk = (marks: readonly PaperPoint[], scale: number): Ink[] =>
  inkOn(
    'screw',
    marks.map((mark) => circle(mark, screwRadius(scale), { fill: '#000', stroke: 'none' })),
  );
