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

/** What is true behind a simulated survey. */
export interface Survey {
  readonly room: Room;
  readonly marks: readonly Mark[];
  readonly spacing: number;
  /** Whether the spacing is one of the usual ones. */
  readonly usual: boolean;
  readonly straying: number;
  readonly drift: number;
  readonly width: number;
  /** Centres of the joists in the room at mid-length and slope, mm and mm per mm. */
  readonly centres: readonly number[];
  readonly slope: number;
  /** For each mark the joist it is of, `null` when spurious or a miss. */
  readonly of: readonly (number | null)[];
}

export const USUAL = [300, 304.8, 355.6, 381, 400, 406.4, 450, 457.2, 600, 609.6];
const KINDS = [
  { kind: 'probe', sd: 3 },
  { kind: 'fixing', sd: 6 },
  { kind: 'detector', sd: 10 },
  { kind: 'loft', sd: 15 },
] as const;

export interface SurveyOptions {
  /** No spurious marks, and no joist unmarked between the first and the last. */
  readonly clean?: boolean;
  /** Marks on how many lines along the joists; one at mid-length, or spread evenly. */
  readonly spread?: boolean;
}

/**
 * A survey: spacing from the usual ones or (one in twenty) any from 250 to 700, offset even, joists straying on their own by up
 * to 8 mm and drifting by up to 2 mm a bay, 3 to 12 marks of one or two kinds on neighbouring joists of which up to 30 % have none,
 * up to 10 % spurious marks, up to 4 misses of which one in twenty is false.
 */
export function surveyOf(seed: number, options: SurveyOptions = {}): Survey {
  const random = seeded(seed);
  const between = (least: number, greatest: number): number => least + (greatest - least) * random();
  const whole = (least: number, greatest: number): number => Math.floor(between(least, greatest + 1));
  const length = Math.round(between(2400, 6000));
  const depth = Math.round(length * between(0.7, 1.1));
  const usual = random() >= 0.05;
  const spacing = usual ? USUAL[whole(0, USUAL.length - 1)] : Math.round(between(250, 700));
  const straying = between(0, 8);
  const drift = between(0, 2);
  const width = [38, 44, 47, 50][whole(0, 3)];
  const slope = options.spread ? normal(random) * 0.002 : 0;
  const centres: number[] = [];
  let node = random() * spacing;
  while (node <= length) {
    const centre = node + normal(random) * straying;
    if (centre >= 0 && centre <= length) centres.push(centre);
    node += spacing + normal(random) * drift;
  }
  const unmarked = options.clean ? 0 : between(0, 0.3);
  const spurious = options.clean ? 0 : between(0, 0.1);
  const wanted = whole(3, 12);
  const start = whole(0, Math.max(0, centres.length - Math.ceil(wanted / (1 - unmarked))));
  const marked: number[] = [];
  for (let k = start; k < centres.length && marked.length < wanted; k++) if (random() >= unmarked) marked.push(k);
  const kinds = [KINDS[whole(0, 3)], KINDS[whole(0, 3)]];
  const found: { mark: Mark; of: number | null }[] = [];
  const along = (): number => (options.spread ? Math.round(between(100, depth - 100)) : Math.round(depth / 2));
  for (const k of marked) {
    const { kind, sd } = kinds[whole(0, 1)];
    const y = along();
    if (random() < spurious) found.push({ mark: { x: Math.round(random() * length * 10) / 10, y, kind }, of: null });
    else {
      const centre = centres[k] + slope * (y - depth / 2);
      const x = Math.round((centre + normal(random) * sd) * 10) / 10;
      found.push({ mark: { x: Math.min(length + 50, Math.max(-50, x)), y, kind }, of: k });
    }
  }
  const misses = whole(0, 4);
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
    const j = Math.floor(random() * (i + 1));
    [found[i], found[j]] = [found[j], found[i]];
  }
  return {
    room: { outline: rectangle(length, depth) },
    marks: found.map(({ mark }) => mark),
    spacing,
    usual,
    straying,
    drift,
    width,
    centres,
    slope,
    of: found.map(({ of }) => of),
  };
}
