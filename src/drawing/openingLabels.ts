import { type Box, boxOf, grown, type Label, overlap } from './label.js';
import { LETTERS, shortened, textWidth } from './lettering.js';
import type { NamedOpening } from './openings.js';
import type { PaperPoint } from './svg.js';

const HEIGHT = LETTERS.small;
/** Names longer than this are cut, mm on paper. */
const WIDEST = 26;

/** Names of the openings: in a wide one, beside a small one, at the first place that touches no screw and no other name. */
export function openingLabels(openings: readonly NamedOpening[], screws: readonly PaperPoint[], lines: readonly Box[]): Label[] {
  const marks = screws.map(({ x, y }) => grown({ left: x, right: x, top: y, bottom: y }, 0.5));
  const labels: Label[] = [];
  for (const { box, name } of openings) {
    const taken = [...openings.map((each) => each.box), ...labels.map(boxOf)];
    const text = shortened(name, WIDEST, HEIGHT, true);
    const places = candidates(box, text);
    const free = (label: Label): number => {
      const own = grown(boxOf(label), 0.3);
      const hits = (boxes: readonly Box[]): number => boxes.filter((other) => overlap(own, other)).length;
      const others = taken.filter((other) => other !== box || !inside(boxOf(label), box));
      return 100 * hits(others) + 10 * hits(marks) + hits(lines);
    };
    labels.push(places.reduce((best, each) => (free(each) < free(best) ? each : best)));
  }
  return labels;
}

const inside = (inner: Box, outer: Box): boolean =>
  inner.left > outer.left && inner.right < outer.right && inner.top > outer.top && inner.bottom < outer.bottom;

function candidates({ left, right, top, bottom }: Box, text: string): Label[] {
  const middle = { x: (left + right) / 2, y: (top + bottom) / 2 };
  const common = { text, height: HEIGHT, bold: true, clear: true } as const;
  const width = textWidth(text, HEIGHT, true);
  const within: Label[] =
    right - left > width + 3 && bottom - top > HEIGHT * 3 ? [{ ...common, ...middle, anchor: 'middle' }] : [];
  const round: Label[] = [];
  for (const away of [2.2, 3.2, 4.4, 6, 8]) {
    for (const shift of [0, -2, 2, -3.5, 3.5, -5, 5]) {
      round.push(
        { ...common, x: right + away, y: middle.y + shift, anchor: 'start' },
        { ...common, x: left - away, y: middle.y + shift, anchor: 'end' },
        { ...common, x: middle.x + shift, y: top - away - HEIGHT / 2, anchor: 'middle' },
        { ...common, x: middle.x + shift, y: bottom + away + HEIGHT / 2, anchor: 'middle' },
      );
    }
  }
  return [...within, ...round];
}
