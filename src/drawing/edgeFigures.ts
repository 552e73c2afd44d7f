import { labelSvg } from './label.js';
import { LETTERS, textWidth } from './lettering.js';
import { WIDTH } from './lineTypes.js';
import { spread } from './spread.js';
import { type PaperPoint, polyline } from './svg.js';

/** A figure that belongs to a place on the edge of a sketch, mm on paper. */
export interface EdgeFigure {
  readonly at: number;
  readonly text: string;
}

const SMALL = LETTERS.small;
/** Where the line to a figure begins and ends, from the edge outward: the name of a wall stands within. */
const FROM = 5;
const TO = 8;

/** Figures along a level edge, over it (-1) or under it (1), moved apart where they would touch; in order along the edge. */
export function levelFigures(figures: readonly EdgeFigure[], edge: number, way: 1 | -1): string[] {
  const places = spread(
    figures.map(({ at, text }) => ({ at, size: textWidth(text, SMALL) })),
    1.5,
  );
  return figures.flatMap(({ at, text }, i) => [
    leader([
      { x: at, y: edge + way * FROM },
      { x: at, y: edge + way * (TO - 1.5) },
      { x: places[i], y: edge + way * TO },
    ]),
    labelSvg({ text, x: places[i], y: edge + way * (TO + 0.6 + SMALL / 2), height: SMALL, anchor: 'middle' }),
  ]);
}

/** Figures beside an upright edge, at its right, in order down the sheet. */
export function uprightFigures(figures: readonly EdgeFigure[], edge: number): string[] {
  const places = spread(
    figures.map(({ at }) => ({ at, size: SMALL })),
    1,
  );
  return figures.flatMap(({ at, text }, i) => [
    leader([
      { x: edge + FROM, y: at },
      { x: edge + TO - 1.5, y: at },
      { x: edge + TO, y: places[i] },
    ]),
    labelSvg({ text, x: edge + TO + 0.6, y: places[i], height: SMALL, anchor: 'start' }),
  ]);
}

const leader = (points: readonly PaperPoint[]): string => polyline(points, { 'stroke-width': WIDTH.narrow });
