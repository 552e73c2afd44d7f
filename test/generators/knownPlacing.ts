import { type Assumptions, usualAssumptions } from '../../src/joists/assumptions.js';
import { type Fit, fitOf } from '../../src/joists/fit.js';
import { sightAlong } from '../../src/joists/readings.js';
import { systemOf } from '../../src/joists/system.js';
import type { Mark } from '../../src/survey/mark.js';
import { rectangle } from '../../src/survey/rectangle.js';

/** Marks whose joists are known: `joists[n]` is the number of the joist of `marks[n]`, in order across the joists. */
export interface Known {
  readonly joists: readonly number[];
  readonly values: readonly number[];
  /** Standard deviations: of a reading, of a joist on its own, of what a bay adds; mm. */
  readonly sd: number;
  readonly own: number;
  readonly bay: number;
  /** Spacing beforehand and its standard deviation, mm. */
  readonly spacing: number;
  readonly spread: number;
}

/** The library's fit of marks whose joists are known, in a room that runs along x. */
export function fitKnown({ joists, values, sd, own, bay, spacing, spread }: Known): Fit {
  const assumptions: Assumptions = { ...usualAssumptions, ownSkew: 0 };
  const room = { outline: rectangle(20_000, 4000) };
  const marks = values.map((x): Mark => ({ x, y: 2000, sd }));
  const sight = sightAlong('y', room, marks, 47, assumptions);
  const family = { kind: 'usual' as const, spacing, spread, prior: 1, straying: [own], drift: [bay] };
  const places = sight.readings.map(({ mark }) => ({ joist: joists[mark], off: 0 }));
  const system = systemOf(sight, { family, places, doubled: [] }, 47, 1, assumptions);
  return fitOf(system, { straying: own, drift: bay, skew: 0, fan: 0 });
}
