import { type Ink, inkOn } from './ink.js';
import { DASHES, WIDTH } from './lineTypes.js';
import type { Sheet } from './sheet.js';
import type { Subject } from './subject.js';
import { line, type PaperPoint, polygon } from './svg.js';
import type { ZoneLabel } from './zoneLabels.js';

/** Half the length of the mark that shows which way joists run, and of its heads, mm on paper. */
const RUN = 5.5;
const HEAD = { length: 2.2, half: 0.8 } as const;

/** The borders of zones that are no walls, and a mark in each zone that shows which way its joists run. */
export function zonesInk({ zones }: Subject, labels: readonly ZoneLabel[], sheet: Sheet): Ink[] {
  const drawn = new Set<string>();
  const borders = zones.flatMap(({ bounds, zone }) =>
    bounds.flatMap(({ isWall, from, to }) => {
      const [a, b] = [sheet.place(from), sheet.place(to)];
      // Two zones side by side have the same border, each its own way round.
      const [first, last] = a.x < b.x || (a.x === b.x && a.y < b.y) ? [a, b] : [b, a];
      const key = `${first.x} ${first.y} ${last.x} ${last.y}`;
      if (isWall || drawn.has(key)) return [];
      drawn.add(key);
      return line(a, b, { 'stroke-width': WIDTH.wide, 'stroke-dasharray': DASHES.doubleChain, 'data-zone': zone });
    }),
  );
  return inkOn('zone', [...borders, ...labels.flatMap(({ arrow, upward }) => doubleArrow(arrow, upward))]);
}

/** A line with a head at each end. */
export function doubleArrow({ x, y }: PaperPoint, upward: boolean, half: number = RUN): string[] {
  const spot = (along: number, beside: number): PaperPoint =>
    upward ? { x: x + beside, y: y + along } : { x: x + along, y: y + beside };
  const head = (way: 1 | -1): string =>
    polygon([spot(way * half, 0), spot(way * (half - HEAD.length), HEAD.half), spot(way * (half - HEAD.length), -HEAD.half)], {
      fill: '#000',
      stroke: 'none',
    });
  return [line(spot(-half, 0), spot(half, 0), { 'stroke-width': WIDTH.wide }), head(1), head(-1)];
}

/** How much of the sheet the mark takes. */
export const arrowBox = ({ x, y }: PaperPoint, upward: boolean) =>
  upward
    ? { left: x - HEAD.half, right: x + HEAD.half, top: y - RUN, bottom: y + RUN }
    : { left: x - RUN, right: x + RUN, top: y - HEAD.half, bottom: y + HEAD.half };
