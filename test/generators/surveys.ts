import type { Mark } from '../../src/survey/mark.js';
import { rectangle } from '../../src/survey/rectangle.js';
import type { Room } from '../../src/survey/room.js';

/** A stream of even numbers in [0, 1) from a seed: mulberry32. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A standard normal number: Box and Muller. */
export const normal = (random: () => number): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** A simulated survey, and what is true behind it. */
export interface Survey {
  readonly room: Room;
  readonly marks: readonly Mark[];
  /** Spacing the joists were set out to, mm, and whether it is one of the usual ones. */
  readonly spacing: number;
  readonly usual: boolean;
  /** Standard deviations of what each joist strays on its own, and of what each bay adds, mm. */
  readonly straying: number;
  readonly drift: number;
  readonly width: number;
  /** Centres at mid-length of the joists in the room and of one beyond each wall, mm. */
  readonly centres: readonly number[];
  /** Slope of all joists, mm per mm. */
  readonly slope: number;
  /** For each mark the index of its joist in `centres`; `null` when spurious or a miss. */
  readonly of: readonly (number | null)[];
}

export const USUAL = [300, 304.8, 355.6, 381, 400, 406.4, 450, 457.2, 600, 609.6];

const KINDS = [
  { kind: 'probe', sd: 3 },
  { kind: 'fixing', sd: 6 },
  { kind: 'detector', sd: 10 },
  { kind: 'loft', sd: 15 },
] as const;

/** What kinds of surveys are drawn. */
export interface SurveyOptions {
  /** No spurious marks. */
  readonly genuine?: boolean;
  /** Least and greatest number of marks on timber; 3 and 12 when not given. */
  readonly least?: number;
  readonly greatest?: number;
  /** Length across the joists of every room, mm; drawn when not given. */
  readonly length?: number;
  /** Probes that met nothing; 0 to 4 when not given. */
  readonly misses?: number;
  /** Marks anywhere along the joists, which then run a little askew; otherwise all on one line. */
  readonly spread?: boolean;
}

/** Numbers drawn from one stream. */
interface Draw {
  readonly random: () => number;
  readonly between: (least: number, greatest: number) => number;
  readonly whole: (least: number, greatest: number) => number;
}

function drawFrom(seed: number): Draw {
  const random = seeded(seed);
  const between = (least: number, greatest: number): number => least + (greatest - least) * random();
  return { random, between, whole: (least, greatest) => Math.floor(between(least, greatest + 1)) };
}

/** The ceiling behind a survey. */
type Ceiling = Omit<Survey, 'marks' | 'of'> & { readonly length: number; readonly depth: number };

interface DrawnMark {
  readonly mark: Mark;
  readonly of: number | null;
}

/**
 * Draws a survey of a room 2.4 to 6 m across: centres from the usual ones, or in one of twenty surveys any from 250 to 700, offset
 * even, joists straying on their own by a standard deviation of 0 to 8 mm and drifting by 0 to 2 mm a bay, 3 to 12 marks of one or
 * two kinds on neighbouring joists of which up to 30 % have none, up to 10 % spurious marks, and up to 4 misses of which one in
 * twenty is false. One joist in ten that is marked is marked again.
 */
export function surveyOf(seed: number, options: SurveyOptions = {}): Survey {
  const draw = drawFrom(seed);
  const ceiling = ceilingOf(draw, options);
  const found = [...timberOf(draw, ceiling, options), ...missesOf(draw, ceiling, options)];
  for (let i = found.length - 1; i > 0; i--) {
    const j = draw.whole(0, i);
    [found[i], found[j]] = [found[j], found[i]];
  }
  const { length: _, depth: __, ...rest } = ceiling;
  return { ...rest, marks: found.map(({ mark }) => mark), of: found.map(({ of }) => of) };
}

function ceilingOf({ random, between, whole }: Draw, options: SurveyOptions): Ceiling {
  const length = options.length ?? Math.round(between(2400, 6000));
  const depth = Math.round(length * between(0.7, 1.1));
  const usual = random() >= 0.05;
  const spacing = usual ? USUAL[whole(0, USUAL.length - 1)] : Math.round(between(250, 700) * 10) / 10;
  const straying = between(0, 8);
  const drift = between(0, 2);
  const width = [38, 44, 47, 50][whole(0, 3)];
  const slope = options.spread ? normal(random) * 0.002 : 0;
  const centres: number[] = [];
  for (let node = (random() - 1) * spacing; node < length + spacing; node += spacing + normal(random) * drift) {
    centres.push(node + normal(random) * straying);
  }
  return { room: { outline: rectangle(length, depth) }, length, depth, spacing, usual, straying, drift, width, slope, centres };
}

/** Where a joist's centre is at a place along it. */
const centreAt = ({ centres, slope, depth }: Ceiling, joist: number, y: number): number =>
  centres[joist] + slope * (y - depth / 2);

const lineAlong = ({ between }: Draw, { depth }: Ceiling, { spread }: SurveyOptions): number =>
  Math.round(spread ? between(100, depth - 100) : depth / 2);

/** The joists that are marked, in order, some of them twice; drawn again where they are too few. */
function markedJoists(draw: Draw, ceiling: Ceiling, options: SurveyOptions): number[] {
  const { random, between, whole } = draw;
  const { centres, length } = ceiling;
  const inRoom = centres.map((_, k) => k).filter((k) => centres[k] >= 0 && centres[k] <= length);
  const least = options.least ?? 3;
  const wanted = whole(least, options.greatest ?? 12);
  while (true) {
    const unmarked = between(0, 0.3);
    const start = whole(0, Math.max(0, inRoom.length - Math.ceil(wanted / (1 - unmarked))));
    const marked: number[] = [];
    for (const k of inRoom.slice(start)) {
      if (random() < unmarked) continue;
      marked.push(k);
      if (random() < 0.1) marked.push(k);
    }
    if (marked.length >= Math.min(least, 12)) return marked.slice(0, wanted);
  }
}

function timberOf(draw: Draw, ceiling: Ceiling, options: SurveyOptions): DrawnMark[] {
  const { random, between, whole } = draw;
  const { length } = ceiling;
  const spurious = options.genuine ? 0 : between(0, 0.1);
  const kinds = [KINDS[whole(0, 3)], KINDS[whole(0, 3)]];
  return markedJoists(draw, ceiling, options).map((joist) => {
    const { kind, sd } = kinds[whole(0, 1)];
    const y = lineAlong(draw, ceiling, options);
    if (random() < spurious) return { mark: { x: Math.round(random() * length * 10) / 10, y, kind }, of: null };
    const x = Math.round((centreAt(ceiling, joist, y) + normal(random) * sd) * 10) / 10;
    return { mark: { x: Math.min(length + 50, Math.max(-50, x)), y, kind }, of: joist };
  });
}

function missesOf(draw: Draw, ceiling: Ceiling, options: SurveyOptions): DrawnMark[] {
  const { random, whole } = draw;
  const misses: DrawnMark[] = [];
  const wanted = options.misses ?? whole(0, 4);
  while (misses.length < wanted) {
    const x = Math.round(random() * ceiling.length);
    const y = lineAlong(draw, ceiling, options);
    const inTimber = ceiling.centres.some((_, k) => Math.abs(centreAt(ceiling, k, y) - x) < ceiling.width / 2);
    if (!inTimber || random() < 0.05) misses.push({ mark: { x, y, found: false }, of: null });
  }
  return misses;
}

/** Standard deviation of a mark by its kind in these surveys, mm. */
export const spreadOf = ({ kind }: Mark): number => KINDS.find((each) => each.kind === kind)?.sd ?? 3;
