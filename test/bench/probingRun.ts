import { inferJoistsIn } from '../../src/joists/inferJoists.js';
import { probeAfter } from '../../src/joists/nextProbe.js';
import { ruleSets } from '../../src/rules/ruleSets.js';
import type { Mark } from '../../src/survey/mark.js';
import { rectangle } from '../../src/survey/rectangle.js';
import { fromSetOut, LENGTH, type ProbingGame, START_SD, WIDTH } from '../generators/probingGames.js';
import { Ideal, idealProbe } from './idealProbing.js';

/** A way of choosing where the next hole goes. */
export type Rule = 'next' | 'even' | 'nearest';

/** How one game went. */
export interface Played {
  readonly probes: number;
  /** Whether the outermost joists were within 15 mm, as set out. */
  readonly right: boolean;
  /** ms of each choice of a hole. */
  readonly times: readonly number[];
}

const MOST = 25;
/** How near both ends must be, mm. */
const RIGHT = 15;
const LINE = 1500;
const room = { outline: rectangle(LENGTH, 3000) };

/** Plays one game with the library's own posterior: until it is this sure of both ends and the middle, or sees no hole worth drilling. */
export function play(game: ProbingGame, rule: Rule, certainty = 0.9, spacings?: readonly number[]): Played {
  const marks: Mark[] = game.start.map((x) => ({ x, y: LINE, kind: 'probe', sd: START_SD }));
  const times: number[] = [];
  for (let probes = 0; ; probes++) {
    const inference = inferJoistsIn({ room, marks, direction: 'y', width: WIDTH, ...(spacings && { spacings }) });
    const start = performance.now();
    const probe = probeAfter(inference, { certainty, rules: ruleSets.uk });
    times.push(performance.now() - start);
    if (probe === null || probes === MOST) {
      const ends = [inference.joists[0], inference.joists[inference.joists.length - 1]];
      return { probes, right: ends.every((joist) => fromSetOut(game, joist.start.x) <= RIGHT), times };
    }
    const x = rule === 'next' ? probe.x : rule === 'even' ? evenly(probes) : nextDoor(inference.joists, marks);
    const timber = game.drill(x);
    marks.push(timber ? { x, y: LINE, kind: 'probe', centred: false } : { x, y: LINE, kind: 'probe', found: false });
  }
}

/** Halves, quarters, eighths of the room, in whole cm. */
function evenly(probes: number): number {
  let [share, half] = [0, 0.5];
  for (let n = probes + 1; n > 0; n >>= 1, half /= 2) if (n & 1) share += half;
  return Math.round((share * LENGTH) / 10) * 10;
}

/** The believed joist nearest to one that is marked, which nobody has probed. */
function nextDoor(joists: readonly { readonly start: { readonly x: number } }[], marks: readonly Mark[]): number {
  const away = (x: number, among: readonly Mark[]): number => Math.min(...among.map((mark) => Math.abs(mark.x - x)));
  const met = marks.filter(({ found }) => found !== false);
  const places = joists.map(({ start }) => Math.round(start.x / 10) * 10).filter((x) => away(x, marks) > 30);
  return places.sort((a, b) => away(a, met) - away(b, met) || a - b)[0] ?? Math.round(marks[0].x / 10) * 10;
}

/** Plays one game with the exact posterior of somebody who knows the three spacings, the straying and the spreads. */
export function playIdeal(game: ProbingGame): Omit<Played, 'times'> {
  const ideal = new Ideal(game.start);
  for (let probes = 0; ; probes++) {
    const best = ideal.best();
    if (best.mass >= 0.9 || probes === MOST) {
      return { probes, right: [best.places[0], best.places[2]].every((x) => fromSetOut(game, x) <= RIGHT) };
    }
    const x = idealProbe(ideal);
    ideal.observe(x, game.drill(x));
  }
}
