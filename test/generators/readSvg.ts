/** An element of a drawing, with what stands in it. */
export interface SvgElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly SvgElement[];
  /** Its own text, entities resolved. */
  readonly text: string;
}

/** A text on a sheet as a box, by widths estimated here and not by the library: mm. */
export interface TextBox {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Reads XML strictly: throws on a tag that is not closed, an attribute given twice or without quotes, a bare `&` or `<`. */
export function readSvg(source: string): SvgElement {
  let at = 0;
  const fail = (what: string): never => {
    throw new Error(`${what} at ${at}: ${JSON.stringify(source.slice(at, at + 40))}`);
  };
  const take = (pattern: RegExp): string[] => {
    const sticky = new RegExp(pattern.source, 'y');
    sticky.lastIndex = at;
    const match = sticky.exec(source) ?? fail(`expected ${pattern}`);
    at = sticky.lastIndex;
    return [...match];
  };
  const element = (): SvgElement => {
    const name = take(/<([a-z][a-z0-9]*)/)[1];
    const attributes: Record<string, string> = {};
    while (/\s/.test(source[at])) {
      const [, key, value] = take(/\s+([A-Za-z][A-Za-z0-9-]*)="([^"<]*)"/);
      if (key in attributes) fail(`${key} twice`);
      attributes[key] = resolved(value);
    }
    if (source.startsWith('/>', at)) {
      at += 2;
      return { name, attributes, children: [], text: '' };
    }
    take(/>/);
    const children: SvgElement[] = [];
    let text = '';
    while (!source.startsWith('</', at)) {
      if (source[at] === '<') children.push(element());
      else text += resolved(take(/[^<]+/)[0]);
    }
    if (take(/<\/([a-z]+)>/)[1] !== name) fail(`expected the end of ${name}`);
    return { name, attributes, children, text };
  };
  const root = element();
  take(/\n$/);
  return root;
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

function resolved(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: XML does not allow them
  if (/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/.test(text)) throw new Error('a character that XML does not allow');
  return text.replace(/&([^;]*);|&/g, (all, name: string | undefined) => {
    if (name === undefined || !(name in ENTITIES)) throw new Error(`not an entity: ${all}`);
    return ENTITIES[name];
  });
}

/** All elements, each before what stands in it. */
export const everyElement = (root: SvgElement): SvgElement[] => [root, ...root.children.flatMap(everyElement)];

/** The elements of one layer. */
export function layerOf(root: SvgElement, name: string): readonly SvgElement[] {
  return everyElement(root).find(({ attributes }) => attributes.class === `soffit-${name}`)?.children ?? [];
}

export const pointsOf = ({ attributes }: SvgElement): { x: number; y: number }[] =>
  attributes.points.split(' ').map((pair) => {
    const [x, y] = pair.split(',').map(Number);
    return { x, y };
  });

export function extentOf(points: readonly { x: number; y: number }[]) {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** Share of the font size that a character takes in a common sans serif face. */
const shareOf = (character: string): number =>
  /[0-9]/.test(character) ? 0.556 : /[A-Z]/.test(character) ? 0.68 : /[ .,:;'|ijlft()-]/.test(character) ? 0.29 : 0.54;

export function textBoxes(elements: readonly SvgElement[]): TextBox[] {
  return elements
    .filter(({ name }) => name === 'text')
    .map(({ text, attributes }) => {
      const size = Number(attributes['font-size']);
      const bold = attributes['font-weight'] === 'bold' ? 1.06 : 1;
      const width = [...text].reduce((sum, character) => sum + shareOf(character), 0) * size * bold;
      const capital = 0.716 * size;
      const anchor = attributes['text-anchor'] ?? 'start';
      const before = anchor === 'start' ? 0 : anchor === 'end' ? width : width / 2;
      const [x, y] = [Number(attributes.x), Number(attributes.y)];
      return attributes.transform === undefined
        ? { text, left: x - before, right: x - before + width, top: y - capital, bottom: y }
        : { text, left: x - capital, right: x, top: y + before - width, bottom: y + before };
    });
}

export const boxesTouch = (a: Omit<TextBox, 'text'>, b: Omit<TextBox, 'text'>): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
