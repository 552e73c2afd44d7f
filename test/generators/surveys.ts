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

/**
 * Draws a survey of a room 2.4 to 6 m across: centres from the usual ones, or in one of twenty surveys any from 250 to 700, offset
 * even, joists straying on their own by a standard deviation of 0 to 8 mm and drifting by 0 to 2 mm a bay, 3 to 12 marks of one or
 * two kinds on neighbouring joists of which up to 30 % have none, up to 10 % spurious marks, and up to 4 misses of which one in
 * twenty is false. One joist in ten that is marked is marked again where marks are left over.
 */
export function surveyOf(seed: number, options: SurveyOptions = {}): Survey {
  const random = seeded(seed);
  const between = (least: number, greatest: number): number => least + (greatest - least) * random();
  const whole = (least: number, greatest: number): number => Math.floor(between(least, greatest + 1));
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
  const inRoom = centres.map((_, k) => k).filter((k) => centres[k] >= 0 && centres[k] <= length);
  const unmarked = between(0, 0.3);
  const spurious = options.genuine ? 0 : between(0, 0.1);
  const wanted = whole(options.least ?? 3, options.greatest ?? 12);
  const start = whole(0, Math.max(0, inRoom.length - Math.ceil(wanted / (1 - unmarked))));
  const marked: number[] = [];
  for (const k of inRoom.slice(start)) {
    if (marked.length < wanted && random() >= unmarked) marked.push(k);
    if (marked.length < wanted && marked.at(-1) === k && random() < 0.1) marked.push(k);
  }
  const kinds = [KINDS[whole(0, 3)], KINDS[whole(0, 3)]];
  const found: { mark: Mark; of: number | null }[] = [];
  const along = (): number => (options.spread ? Math.round(between(100, depth - 100)) : Math.round(depth / 2));
  for (const k of marked) {
    const { kind, sd } = kinds[whole(0, 1)];
    const y = along();
    if (random() < spurious) found.push({ mark: { x: Math.round(random() * length * 10) / 10, y, kind }, of: null });
    else {
      const x = Math.round((centres[k] + slope * (y - depth / 2) + normal(random) * sd) * 10) / 10;
      found.push({ mark: { x: Math.min(length + 50, Math.max(-50, x)), y, kind }, of: k });
    }
  }
  const misses = options.misses ?? whole(0, 4);
  for (let i = 0; i < misses; i++) {
    for (let tries = 0; tries < 50; tries++) {
      const x = Math.round(random() * length);
      const y = along();
      const inTimber = centres.some((centre) => Math.abs(centre + slope * (y - depth / 2) - x) < width / 2);
      if (inTimber && random() >= 0.05) continue;
      found.push({ mark: { x, y, found: false }, of: null });
      break;
    }
  }
  for (let i = found.length - 1; i > 0; i--) {
    const j = whole(0, i);
    [found[i], found[j]] = [found[j], found[i]];
  }
  return {
    room: { outline: rectangle(length, depth) },
    marks: found.map(({ mark }) => mark),
    ...{ spacing, usual, straying, drift, width, centres, slope },
    of: found.map(({ of }) => of),
  };
}

/** Standard deviation of a mark by its kind in these surveys, mm. */
export const spreadOf = ({ kind }: Mark): number => KINDS.find((each) => each.kind === kind)?.sd ?? 3;
