import { type Ink, inkOn } from './ink.js';
import type { Label } from './label.js';
import { LETTERS, shortened, textWidth } from './lettering.js';
import { WIDTH } from './lineTypes.js';
import type { LaidDimension, Side } from './runningDimension.js';
import type { Sheet } from './sheet.js';
import type { Subject } from './subject.js';
import { type PaperPoint, polygon } from './svg.js';
import type { NamedWall } from './wallNames.js';

/** From the wall to the middle of its name, mm on paper. */
const NAME_AT = 3.8;
const HEIGHT = LETTERS.small;

/** The outline of the room. The line lies outside it, so that its inner edge is the measured wall. */
export function roomInk({ plan }: Subject, sheet: Sheet): Ink[] {
  const ring = plan.room.outline.map(sheet.place);
  return inkOn('wall', [
    polygon(ring, { 'stroke-width': 2 * WIDTH.wall, 'stroke-linejoin': 'miter' }),
    polygon(ring, { fill: '#fff', stroke: 'none' }),
  ]);
}

/** The names of the walls, outside them, each along its wall and clear of extension lines where there is room between them. */
export function wallLabels({ walls }: Subject, sheet: Sheet, dimensions: readonly LaidDimension[]): Label[] {
  return walls.map((wall) => {
    const [a, b] = [sheet.place(wall.from), sheet.place(wall.to)];
    const [across, down] = [b.x - a.x, b.y - a.y];
    const upright = Math.abs(down) > Math.abs(across);
    const run = Math.max(Math.abs(across), Math.abs(down));
    const least = textWidth(wall.letter, HEIGHT, true);
    const text = least > run - 2 ? wall.letter : shortened(wall.name, run - 2, HEIGHT, true);
    const out = outward(a, b, walls, sheet);
    const lines = linesAcross(upright, out, sheet, dimensions);
    const middle = upright ? (a.y + b.y) / 2 : (a.x + b.x) / 2;
    const along =
      run === 0 ? 0 : (clearOf(lines, middle, textWidth(text, HEIGHT, true), run) - middle) / (upright ? down : across);
    return {
      text,
      x: (a.x + b.x) / 2 + along * across + out.x * NAME_AT,
      y: (a.y + b.y) / 2 + along * down + out.y * NAME_AT,
      height: HEIGHT,
      anchor: 'middle',
      upright,
      bold: true,
      clear: true,
    };
  });
}

/** Where extension lines cross the strip outside a wall, on the sheet. */
function linesAcross(upright: boolean, out: PaperPoint, { room }: Sheet, dimensions: readonly LaidDimension[]): number[] {
  const level: Side = out.y < 0 ? 'top' : 'bottom';
  const standing: Side = out.x < 0 ? 'left' : 'right';
  const side = upright ? standing : level;
  const stations = dimensions.filter((each) => each.side === side).flatMap((each) => each.stations);
  return stations.map(({ at }) => (upright ? room.top : room.left) + at);
}

/** The place nearest to the middle of a wall where a text of this width touches none of the lines; the middle if none is. */
function clearOf(lines: readonly number[], middle: number, width: number, run: number): number {
  const touches = (at: number): boolean => lines.some((line) => Math.abs(line - at) < width / 2 + 0.6);
  for (let move = 0; move <= (run - width) / 2; move += 0.5) {
    for (const at of [middle - move, middle + move]) if (!touches(at)) return at;
  }
  return middle;
}

/** The direction out of the room, along an axis of the sheet: a ray from the wall meets the other walls an even number of times. */
function outward(a: PaperPoint, b: PaperPoint, walls: readonly NamedWall[], sheet: Sheet): PaperPoint {
  const upright = Math.abs(b.y - a.y) > Math.abs(b.x - a.x);
  const ways: PaperPoint[] = upright
    ? [
        { x: 1, y: 0 },
        { x: -1, y: 0 },
      ]
    : [
        { x: 0, y: 1 },
        { x: 0, y: -1 },
      ];
  // Just off the middle, so that the ray does not run through a corner of a tidy room.
  const from = { x: a.x + (b.x - a.x) * 0.4987 + ways[0].x * 0.01, y: a.y + (b.y - a.y) * 0.4987 + ways[0].y * 0.01 };
  let met = 0;
  for (const wall of walls) {
    const [c, d] = [sheet.place(wall.from), sheet.place(wall.to)];
    const [c1, d1, f1] = upright ? [c.y, d.y, from.y] : [c.x, d.x, from.x];
    if (c1 > f1 === d1 > f1) continue;
    const share = (f1 - c1) / (d1 - c1);
    const at = upright ? c.x + (d.x - c.x) * share : c.y + (d.y - c.y) * share;
    if (at > (upright ? from.x : from.y)) met++;
  }
  return met % 2 === 0 ? ways[0] : ways[1];
}
