import { frameOf } from './frame.js';
import type { Inference } from './inferJoists.js';
import { entropy } from './probeGain.js';
import type { Site } from './probeSites.js';

/** A hole that looks for the first joist. */
export interface FirstProbe {
  readonly site: Site;
  /** bits. */
  readonly gain: number;
  /** Distance between such holes, mm. */
  readonly apart: number;
}

/** Usual centres that a first joist is looked for at, mm: they only set the figure of the gain. */
const USUAL = 400;
/** Two holes nearer than this along the joists are beside each other, mm. */
const BESIDE = 300;

/** A hole a joist's width from the ones that met nothing, from the middle of the room outwards; `null`: the room is searched. */
export function firstProbe({ marks, direction, width, assumptions }: Inference, sites: readonly Site[]): FirstProbe | null {
  const frame = frameOf(direction);
  const misses = marks.filter(({ found }) => found === false).map((mark) => frame.into(mark));
  const apart = Math.floor((width.value - assumptions.wander) / 10) * 10;
  if (sites.length === 0) return null;
  const middle = (sites[0].u + sites[sites.length - 1].u) / 2;
  const beside = ({ u, v }: Site): boolean =>
    misses.every((miss) => Math.abs(miss.v - v) > BESIDE || Math.abs(miss.u - u) >= apart);
  // A hole just one width from an earlier one leaves no gap between them.
  const spare = ({ u, v }: Site): number =>
    misses.reduce((least, miss) => (Math.abs(miss.v - v) > BESIDE ? least : Math.min(least, Math.abs(miss.u - u))), Infinity);
  const free = sites.filter(beside);
  if (free.length === 0) return null;
  const rank = (site: Site): number => (spare(site) === Infinity ? Math.abs(site.u - middle) : spare(site));
  const site = free.reduce((best, each) => (rank(each) < rank(best) - 1e-6 ? each : best));
  return { site, gain: entropy(width.value / USUAL), apart };
}
