import { WIDTH } from './lineTypes.js';
import { line, type PaperPoint, polygon } from './svg.js';

/** Half the length of the mark that shows which way joists run, and of its heads, mm on paper. */
const RUN = 5.5;
const HEAD = { length: 2.2, half: 0.8 } as const;

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
