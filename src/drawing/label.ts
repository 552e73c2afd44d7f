import { fontSize, tail, textWidth } from './lettering.js';
import { element, escaped, rect } from './svg.js';

/** A text on the sheet. */
export interface Label {
  readonly text: string;
  /** The anchor, halfway up the capitals. */
  readonly x: number;
  readonly y: number;
  /** Of a capital, mm. */
  readonly height: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Turned to be read from the right of the sheet. */
  readonly upright?: boolean;
  readonly bold?: boolean;
  /** Blanks out what is under it, for texts that stand on lines. */
  readonly clear?: boolean;
}

/** A rectangle on the sheet, mm. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** What a text covers, tails included. */
export function boxOf({ text, x, y, height, anchor, upright, bold }: Label): Box {
  const width = textWidth(text, height, bold);
  const before = anchor === 'start' ? 0 : anchor === 'end' ? width : width / 2;
  const [over, under] = [height / 2, height / 2 + tail(text, height)];
  return upright
    ? { left: x - over, right: x + under, top: y - (width - before), bottom: y + before }
    : { left: x - before, right: x - before + width, top: y - over, bottom: y + under };
}

export const grown = ({ left, top, right, bottom }: Box, by: number): Box => ({
  left: left - by,
  top: top - by,
  right: right + by,
  bottom: bottom + by,
});

export const overlap = (a: Box, b: Box): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

export const within = (inner: Box, outer: Box): boolean =>
  inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.bottom <= outer.bottom;

/** How much a blank reaches beyond its text, mm. */
export const CLEAR = 0.3;

export function labelSvg(label: Label): string {
  const { text, x, y, height, anchor, upright, bold, clear } = label;
  // The letters stand on their line; the anchor is halfway up a capital.
  const written = element(
    'text',
    {
      x: upright ? x + height / 2 : x,
      y: upright ? y : y + height / 2,
      'font-size': fontSize(height),
      'font-weight': bold ? 'bold' : undefined,
      'text-anchor': anchor === 'start' ? undefined : anchor,
      fill: '#000',
      stroke: 'none',
      transform: upright ? `rotate(-90 ${num(x + height / 2)} ${num(y)})` : undefined,
    },
    escaped(text),
  );
  if (!clear) return written;
  return blankSvg(grown(boxOf(label), CLEAR)) + written;
}

export const blankSvg = ({ left, top, right, bottom }: Box): string =>
  rect(left, top, right - left, bottom - top, { fill: '#fff', stroke: 'none' });

const num = (value: number): number => Math.round(value * 1000) / 1000;
