/** A point on the sheet: mm from its left and its upper edge. */
export interface PaperPoint {
  readonly x: number;
  readonly y: number;
}

type Attributes = Readonly<Record<string, string | number | undefined>>;

/** A number as it is written in a drawing: to 0.001 mm on paper, without a negative zero. */
export const written = (value: number): string => String(Math.round(value * 1000) / 1000 + 0);

/** Whether XML allows a character at all: no control characters but tab and line ends, and no half of a pair. */
function allowed(character: string): boolean {
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x20) return code === 9 || code === 10 || code === 13;
  return code < 0xd800 || (code > 0xdfff && code !== 0xfffe && code !== 0xffff);
}

/** Text as it may stand in XML, between tags and between quotes. */
export const escaped = (text: string): string =>
  [...text]
    .map((character) => (allowed(character) ? character : '\ufffd'))
    .join('')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;');

export function element(name: string, attributes: Attributes, content?: string): string {
  const list = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? written(value) : escaped(String(value))}"`)
    .join('');
  return content === undefined ? `<${name}${list}/>` : `<${name}${list}>${content}</${name}>`;
}

export const line = (a: PaperPoint, b: PaperPoint, attributes: Attributes = {}): string =>
  element('line', { x1: a.x, y1: a.y, x2: b.x, y2: b.y, ...attributes });

export const circle = (centre: PaperPoint, radius: number, attributes: Attributes = {}): string =>
  element('circle', { cx: centre.x, cy: centre.y, r: radius, ...attributes });

export const rect = (x: number, y: number, width: number, height: number, attributes: Attributes = {}): string =>
  element('rect', { x, y, width, height, ...attributes });

const pairs = (points: readonly PaperPoint[]): string => points.map(({ x, y }) => `${written(x)},${written(y)}`).join(' ');

export const polygon = (points: readonly PaperPoint[], attributes: Attributes = {}): string =>
  element('polygon', { points: pairs(points), ...attributes });

export const polyline = (points: readonly PaperPoint[], attributes: Attributes = {}): string =>
  element('polyline', { points: pairs(points), ...attributes });

/** Many separate strokes as one path, which keeps a sheet of some thousand ticks small. */
export const strokes = (segments: readonly (readonly [PaperPoint, PaperPoint])[], attributes: Attributes = {}): string =>
  element('path', {
    d: segments.map(([a, b]) => `M${written(a.x)} ${written(a.y)}L${written(b.x)} ${written(b.y)}`).join(''),
    ...attributes,
  });
