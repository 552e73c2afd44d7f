/** Layers of a drawing, in the order in which they are laid over each other; named by what they hold. */
export const LAYERS = [
  'wall',
  'no-fix',
  'old-joint',
  'joist',
  'chalk',
  'board',
  'cut',
  'opening',
  'zone',
  'screw',
  'dimension',
  'text',
] as const;

/** What a drawing may show or leave out; they lie on each other in this order. */
export type DrawingLayer = (typeof LAYERS)[number];

/**
 * Something drawn, and the layer it belongs to; `sheet` is the key, the notes and the title block, which are always there, and
 * `clear` the blanks that keep joists out of the lettering of pieces.
 */
export interface Ink {
  readonly layer: DrawingLayer | 'clear' | 'sheet';
  readonly svg: string;
}

export const inkOn = (layer: Ink['layer'], parts: readonly string[]): Ink[] => parts.map((svg) => ({ layer, svg }));
