import { doubleArrow } from './doubleArrow.js';
import { type Ink, inkOn } from './ink.js';
import { DASHES, WIDTH } from './lineTypes.js';
import type { Sheet } from './sheet.js';
import type { Subject } from './subject.js';
import { line, type PaperPoint, strokes } from './svg.js';
import type { ZoneLabel } from './zoneLabels.js';

/** As wide as the edges of the boards on both sides together, which it covers: between its dashes the paper shows. */
export const BORDER = { 'stroke-width': WIDTH.wall, 'stroke-dasharray': DASHES.doubleChain } as const;
const borderBlank = (a: PaperPoint, b: PaperPoint): string => strokes([[a, b]], { 'stroke-width': WIDTH.wall, stroke: '#fff' });

/** The borders of zones that are no walls, and a mark in each zone that shows which way its joists run. */
export function zonesInk({ zones }: Subject, labels: readonly ZoneLabel[], sheet: Sheet): Ink[] {
  const drawn = new Set<string>();
  const borders = zones.flatMap(({ bounds, zone }) =>
    bounds.flatMap(({ isWall, from, to }) => {
      if (isWall || zone === undefined) return [];
      const [a, b] = [sheet.place(from), sheet.place(to)];
      // Two zones side by side have the same border, each its own way round.
      const [first, last] = a.x < b.x || (a.x === b.x && a.y < b.y) ? [a, b] : [b, a];
      const key = `${first.x} ${first.y} ${last.x} ${last.y}`;
      if (drawn.has(key)) return [];
      drawn.add(key);
      return [borderBlank(a, b), line(a, b, { ...BORDER, 'data-zone': zone })];
    }),
  );
  return inkOn('zone', [...borders, ...labels.flatMap(({ arrow, upward }) => doubleArrow(arrow, upward))]);
}
