import { TYPEFACE } from './lettering.js';
import { element, escaped, rect } from './svg.js';

/** A sheet as the text of an SVG file: one unit is one mm, the paper white, lines black unless a part says otherwise. */
export interface SheetContent {
  /** mm. */
  readonly width: number;
  readonly height: number;
  readonly title: string;
  /** In the order in which they lie over each other. */
  readonly layers: readonly { readonly name: string; readonly parts: readonly string[] }[];
}

export function svgDocument({ width, height, title, layers }: SheetContent): string {
  const groups = layers.map(({ name, parts }) => element('g', { class: `soffit-${name}` }, `\n${parts.join('\n')}\n`));
  const drawing = element(
    'g',
    { fill: 'none', stroke: '#000', 'stroke-linecap': 'butt', 'font-family': TYPEFACE },
    `\n${groups.join('\n')}\n`,
  );
  const size = { width: `${width}mm`, height: `${height}mm`, viewBox: `0 0 ${width} ${height}` };
  const content = [`\n${element('title', {}, escaped(title))}`, rect(0, 0, width, height, { fill: '#fff' }), `${drawing}\n`];
  return `${element('svg', { xmlns: 'http://www.w3.org/2000/svg', ...size, role: 'img' }, content.join('\n'))}\n`;
}
