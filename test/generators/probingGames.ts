import { normal, seeded } from './surveys.js';

/** A ceiling whose joists are looked for with a drill, and the two marks that are there to start from. */
export interface ProbingGame {
  /** Room across the joists, mm. */
  readonly length: number;
  readonly spacing: number;
  /** Where the first joist would be if none strayed, mm. */
  readonly first: number;
  /** Where the joists are, mm. */
  readonly centres: readonly number[];
  readonly start: readonly number[];
  /** Whether a hole here reports timber; a stream of its own, so that every way of probing plays the same game. */
  readonly drill: (x: number) => boolean;
}

export const LENGTH = 5000;
export const WIDTH = 45;
export const STRAYING = 4;
/** Standard deviation of the two marks to start from, mm. */
export const START_SD = 4;
export const FALSE_MISS = 0.05;
export const SPACINGS = [400, 450, 600];

/** One of three spacings, joists straying on their own, two marks on different joists, one miss in twenty false. */
export function probingGame(seed: number): ProbingGame {
  const random = seeded(seed);
  const spacing = SPACINGS[Math.floor(random() * SPACINGS.length)];
  const first = random() * spacing;
  const centres: number[] = [];
  for (let place = first; place <= LENGTH; place += spacing) centres.push(place + STRAYING * normal(random));
  const one = Math.floor(random() * centres.length);
  const other = (one + 1 + Math.floor(random() * (centres.length - 1))) % centres.length;
  const start = [one, other].map((joist) => centres[joist] + START_SD * normal(random));
  const luck = seeded(seed + 500_009);
  const drill = (x: number): boolean => luck() >= FALSE_MISS && centres.some((centre) => Math.abs(centre - x) <= WIDTH / 2);
  return { length: LENGTH, spacing, first, centres, start, drill };
}

/** How far a place is from the nearest joist as set out, what each strays left aside, mm. */
export function fromSetOut({ first, spacing, length }: ProbingGame, x: number): number {
  const last = Math.floor((length - first) / spacing);
  const nearest = Math.min(last, Math.max(0, Math.round((x - first) / spacing)));
  return Math.abs(x - first - nearest * spacing);
}
