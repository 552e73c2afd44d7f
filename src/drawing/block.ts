import { type Label, labelSvg } from './label.js';
import { LETTERS, wrapped } from './lettering.js';

/** Something that stands in a column beside or below the plan: it knows its height before it is drawn. */
export interface Block {
  /** mm. */
  readonly height: number;
  /** Drawn with its upper left corner here. */
  readonly draw: (x: number, y: number) => string[];
}

/** Distance from line to line as a multiple of the height of a capital. */
export const LEADING = 1.62;

/** A paragraph, wrapped to a width. */
export function paragraph(text: string, width: number, height: number = LETTERS.small, bold = false): Block {
  const lines = wrapped(text, width, height, bold);
  const pitch = height * LEADING;
  return {
    height: lines.length * pitch,
    draw: (x, y) =>
      lines.map((line, i) =>
        labelSvg({ text: line, x, y: y + (i + 0.5) * pitch, height, anchor: 'start', bold } satisfies Label),
      ),
  };
}

/** Blocks one under another. */
export function stacked(blocks: readonly Block[], gap = 0): Block {
  return {
    height: blocks.reduce((sum, { height }) => sum + height, 0) + gap * Math.max(0, blocks.length - 1),
    draw: (x, y) => {
      let at = y;
      return blocks.flatMap((block) => {
        const drawn = block.draw(x, at);
        at += block.height + gap;
        return drawn;
      });
    },
  };
}

/** A block moved to the right of where it would stand. */
export const indented = (block: Block, by: number): Block => ({ height: block.height, draw: (x, y) => block.draw(x + by, y) });

/** Two blocks side by side, their tops level. */
export const beside = (left: Block, right: Block, by: number): Block => ({
  height: Math.max(left.height, right.height),
  draw: (x, y) => [...left.draw(x, y), ...right.draw(x + by, y)],
});

/** Nothing, of a height. */
export const spacer = (height: number): Block => ({ height, draw: () => [] });
