import { doubleArrow } from './doubleArrow.js';
import { type Ink, inkOn } from './ink.js';
import { DASHES, WIDTH } from './lineTypes.js';
import type { Sheet } from './sheet.js';
import type { Subject } from './subject.js';
import { line } from './svg.js';
import type { ZoneLabel } from './zoneLabels.js';

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
      return line(a, b, { 'stroke-width': WIDTH.wide, 'stroke-dasharray': DASHES.doubleChain, 'data-zone': zone });
    }),
  );
  return inkOn('zone', [...borders, ...labels.flatMap(({ arrow, upward }) => doubleArrow(arrow, upward))]);
}
