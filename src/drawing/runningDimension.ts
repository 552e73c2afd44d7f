import { boxOf, grown, type Label, labelSvg } from './label.js';
import { LETTERS, textWidth } from './lettering.js';
import { WIDTH } from './lineTypes.js';
import { spread } from './spread.js';
import { circle, line, type PaperPoint, polygon, polyline, rect } from './svg.js';

/** Where on the sheet a dimension stands, seen from the room. */
export type Side = 'left' | 'right' | 'top' | 'bottom';

/** One figure of a running dimension. */
export interface Station {
  /** Along the side, mm on paper from the least corner of the room on the sheet. */
  readonly at: number;
  readonly value: string;
  /** What stands there: a joist's name. */
  readonly id?: string;
  /** Puts a frame round the name. */
  readonly framed?: boolean;
  /** The zero that the figures run from. */
  readonly origin?: boolean;
  /** How far inside the room's extent the extension line starts, mm on paper. */
  readonly inset?: number;
}

/** A station whose text has found its place, and which of the dimensions on the line it belongs to. */
interface LaidStation extends Station {
  readonly textAt: number;
  readonly chain: number;
}

/** One or several running dimensions on a line, each with a zero of its own, whose texts have found their places. */
export interface LaidDimension {
  readonly side: Side;
  readonly stations: readonly LaidStation[];
  readonly upright: boolean;
  readonly height: number;
  /** From the room outward, mm; with `lane` it begins further out, beyond other dimensions of the same side. */
  readonly depth: number;
  readonly lane: number;
  /** How far texts reach beyond the room along the side, mm. */
  readonly overhang: number;
  readonly legible: boolean;
}

/** From the wall to the dimension line, mm: the names of walls stand between. */
const LINE_AT = 8;
/** Length of the line from the dimension line to the figure. */
const LEADER = 2.5;
const BETWEEN_TEXTS = 1.2;
/** Where extension lines begin that do not come from the room, from the dimensions before them outward. */
const LANE_FOOT = 2;
/** Ends of dimension lines: length and half width of an arrow, and the dot that stands in where there is no room for one. */
const ARROW = { length: 2, half: 0.35, dot: 0.4 };
const ORIGIN_RADIUS = 0.9;

/** Ways to letter the figures, the best first, and how far a figure may be moved from its line before the next one is tried. */
const ALONG = [
  { upright: false, height: LETTERS.medium, reach: 2 },
  { upright: true, height: LETTERS.medium, reach: 4 },
  { upright: true, height: LETTERS.small, reach: 9 },
];
const ASIDE = [
  { upright: false, height: LETTERS.medium, reach: 5 },
  { upright: false, height: LETTERS.small, reach: 9 },
];

/**
 * Lays out superimposed running dimensions: all figures from one origin on one dimension line, each figure at the end of its
 * extension line, after ISO 129-1 (from memory). Figures that would touch are moved apart and led back to their lines.
 *
 * @param chains - dimensions that follow one another on the line, such as those of zones side by side
 */
export function layDimension(side: Side, chains: readonly (readonly Station[])[]): LaidDimension {
  const stations = inOrder(chains);
  const vertical = side === 'left' || side === 'right';
  const ways = vertical ? ASIDE : ALONG;
  for (const way of ways) {
    const width = ({ value, id = '' }: Station): number =>
      Math.max(textWidth(value, way.height), textWidth(id, way.height, true));
    const size = (station: Station): number => (vertical || way.upright ? way.height : width(station));
    const places = spread(
      stations.map((station) => ({ at: station.at, size: size(station) })),
      BETWEEN_TEXTS,
    );
    const moved = Math.max(...stations.map(({ at }, i) => Math.abs(at - places[i])));
    const legible = moved <= way.reach;
    if (!legible && way !== ways[ways.length - 1]) continue;
    const overhang = Math.max(0, -places[0] + size(stations[0]) / 2, ...endOverhang(stations, places, size));
    const depth =
      idAt(stations, way.upright || vertical, way.height) + idSize(stations, way.upright || vertical, way.height) + 0.6;
    return {
      side,
      stations: stations.map((station, i) => ({ ...station, textAt: places[i] })),
      ...way,
      depth,
      lane: 0,
      overhang,
      legible,
    };
  }
  throw new Error('a dimension has at least one way');
}

/** Along the side; where two dimensions meet, each keeps to its own side of the place. */
function inOrder(chains: readonly (readonly Station[])[]): (Station & { readonly chain: number })[] {
  const middle = chains.map((chain) => chain.reduce((sum, { at }) => sum + at, 0) / chain.length);
  return chains
    .flatMap((chain, index) => chain.map((station) => ({ ...station, chain: index })))
    .sort((a, b) => a.at - b.at || middle[a.chain] - middle[b.chain]);
}

const endOverhang = (stations: readonly Station[], places: readonly number[], size: (station: Station) => number): number[] => {
  const last = stations.length - 1;
  const far = Math.max(...stations.map(({ at }) => at));
  return [places[last] + size(stations[last]) / 2 - far];
};

const longest = (texts: readonly string[], height: number, bold = false): number =>
  Math.max(...texts.map((text) => textWidth(text, height, bold)));

/** Where the names begin, from the room outward. */
const idAt = (stations: readonly Station[], lengthwise: boolean, height: number): number =>
  LINE_AT +
  LEADER +
  0.5 +
  (lengthwise
    ? longest(
        stations.map(({ value }) => value),
        height,
      )
    : height) +
  BETWEEN_TEXTS;

function idSize(stations: readonly Station[], lengthwise: boolean, height: number): number {
  const ids = stations.flatMap(({ id }) => id ?? []);
  return ids.length === 0 ? 0 : lengthwise ? longest(ids, height, true) : height;
}

/** Draws a dimension; `corner` is the corner of the room's extent on the sheet at which the side begins. */
export function dimensionSvg(laid: LaidDimension, corner: PaperPoint): string[] {
  const { side, stations, upright, height, lane } = laid;
  const vertical = side === 'left' || side === 'right';
  const sign = side === 'left' || side === 'top' ? -1 : 1;
  const spot = (along: number, outward: number): PaperPoint =>
    vertical
      ? { x: corner.x + sign * (lane + outward), y: corner.y + along }
      : { x: corner.x + along, y: corner.y + sign * (lane + outward) };
  const narrow = { 'stroke-width': WIDTH.narrow };
  const text = (value: string, along: number, outward: number, bold: boolean): Label => {
    const away = sign > 0 ? 'start' : 'end';
    // An upright text runs up the sheet: below the room it ends at its line, above the room it starts there.
    const anchor = vertical ? away : upright ? (sign > 0 ? 'end' : 'start') : 'middle';
    const middle = vertical || upright ? outward : outward + height / 2;
    return { text: value, ...spot(along, middle), height, anchor, upright: upright && !vertical, bold };
  };
  const out = [...new Set(stations.map(({ chain }) => chain))].map((chain) => {
    const ends = stations.filter((station) => station.chain === chain).map(({ at }) => at);
    return line(spot(Math.min(...ends), LINE_AT), spot(Math.max(...ends), LINE_AT), narrow);
  });
  const names = idAt(stations, upright || vertical, height);
  for (const station of stations) {
    const own = stations.filter(({ chain }) => chain === station.chain);
    const origin = own.find((each) => each.origin);
    const { at, textAt, value, id, framed, inset = 0 } = station;
    // From a line further out the extension lines do not run back through the figures of the lines before it.
    const foot = lane > 0 ? LANE_FOOT : 1.5 - inset;
    out.push(
      polyline([spot(at, foot), spot(at, LINE_AT), spot(at, LINE_AT + 0.6), spot(textAt, LINE_AT + LEADER)], narrow),
      station === origin
        ? circle(spot(at, LINE_AT), ORIGIN_RADIUS, { ...narrow, fill: '#fff' })
        : arrow(at, origin?.at ?? at, nearest(station, own), spot),
      labelSvg(text(value, textAt, LINE_AT + LEADER + 0.5, false)),
    );
    if (id === undefined) continue;
    const name = text(id, textAt, names, true);
    out.push(labelSvg(name));
    if (framed) {
      const { left, top, right, bottom } = grown(boxOf(name), 0.5);
      out.push(rect(left, top, right - left, bottom - top, narrow));
    }
  }
  return out;
}

/** Where the extension lines of a dimension run: along its side, and from how far inside the room's extent to how far outside. */
export const extensionLines = ({ stations, lane }: LaidDimension): { at: number; from: number; to: number }[] =>
  stations.map(({ at, inset = 0 }) => ({ at, from: lane > 0 ? -lane - LANE_FOOT : inset, to: lane + LINE_AT }));

/** Distance to the next station towards the origin's side or away from it, whichever is less. */
const nearest = (station: Station, stations: readonly Station[]): number =>
  Math.min(...stations.filter((other) => other !== station).map((other) => Math.abs(other.at - station.at)));

function arrow(at: number, from: number, room: number, spot: (along: number, outward: number) => PaperPoint): string {
  if (room < ARROW.length + 0.5) return circle(spot(at, LINE_AT), ARROW.dot, { fill: '#000', stroke: 'none' });
  const back = at + (from < at ? -1 : 1) * ARROW.length;
  return polygon([spot(at, LINE_AT), spot(back, LINE_AT - ARROW.half), spot(back, LINE_AT + ARROW.half)], {
    fill: '#000',
    stroke: 'none',
  });
}
