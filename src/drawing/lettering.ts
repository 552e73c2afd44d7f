/**
 * Lettering heights after ISO 3098 (nominal heights of 2.5, 3.5, 5 and 7 mm; from memory), as the height of a capital in mm on
 * paper. Nothing on a sheet is lettered smaller than the first.
 */
export const LETTERS = { small: 2.5, medium: 3.5, large: 5, stamp: 7 } as const;

/** The typeface: whatever stands in for it on a device has the same or nearly the same widths. */
export const TYPEFACE = "Arial, 'Liberation Sans', Helvetica, sans-serif";

/** Height of a capital as a share of the font size, in that typeface. */
const CAPITAL = 0.716;
/** How far a tail goes below the line, as a share of the height of a capital, and the characters of ASCII without one. */
const TAIL = 0.3;
const WITHOUT_TAIL = /^[A-PR-Za-fhik-ort-xz0-9 .:'"+<>=×Ø°%#!?*^~-]*$/;
/** Bold letters are wider by about this. */
const BOLD = 1.1;

/** Widths of the printable ASCII characters from the space on, in thousandths of the font size. */
const WIDTHS = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556, 556,
  556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778,
  722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222,
  500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
];
/** An accented letter or a sign, and a character that fills a square. */
const OTHER = 720;
const SQUARE = 1000;

/** How far a text goes below its line, mm. */
export const tail = (text: string, height: number): number => (WITHOUT_TAIL.test(text) ? 0 : TAIL * height);

export const fontSize = (height: number): number => height / CAPITAL;

/** Width of a text on paper, mm, for a height of its capitals in mm: an estimate, the same on every device. */
export function textWidth(text: string, height: number, bold = false): number {
  let thousandths = 0;
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0;
    thousandths += WIDTHS[code - 32] ?? (code < 0x2e80 ? OTHER : SQUARE);
  }
  return (thousandths / 1000) * fontSize(height) * (bold ? BOLD : 1);
}

/** A text cut to a width in mm, with an ellipsis where something was cut off. */
export function shortened(text: string, width: number, height: number, bold = false): string {
  if (textWidth(text, height, bold) <= width) return text;
  const characters = [...text];
  while (characters.length > 0 && textWidth(`${characters.join('').trimEnd()}…`, height, bold) > width) characters.pop();
  return `${characters.join('').trimEnd()}…`;
}

/** A text broken into lines no wider than a width in mm; a word that is wider by itself is cut. */
export function wrapped(text: string, width: number, height: number, bold = false): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((each) => each !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer, height, bold) <= width) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = shortened(word, width, height, bold);
  }
  return line === '' ? lines : [...lines, line];
}
