import { type Block, paragraph } from './block.js';
import { labelSvg } from './label.js';
import { LETTERS } from './lettering.js';
import { WIDTH } from './lineTypes.js';
import type { Subject } from './subject.js';
import { rect } from './svg.js';

/** The stamp of a plan that is held: nobody is to buy, cut or fix by it. */
export function holdStamp({ say }: Subject, width: number): Block {
  const words = paragraph(say('hold.text'), width - 6, LETTERS.small, true);
  const height = 14.5 + words.height;
  return {
    height: height + 2,
    draw: (x, y) => [
      rect(x + 0.5, y + 0.5, width - 1, height - 1, { 'stroke-width': WIDTH.wall }),
      rect(x + 1.8, y + 1.8, width - 3.6, height - 3.6, { 'stroke-width': WIDTH.narrow }),
      labelSvg({ text: say('hold.stamp'), x: x + width / 2, y: y + 7, height: LETTERS.stamp, anchor: 'middle', bold: true }),
      ...words.draw(x + 3, y + 11.2),
    ],
  };
}
