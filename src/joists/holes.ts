import type { Fit } from './fit.js';
import { nodeMeansOf } from './nodeMeans.js';
import type { Placing } from './placing.js';
import { predict, type Target } from './predict.js';
import type { Sight } from './readings.js';

/** A hole beside a joist. */
export interface Hole {
  /** mm from the near wall. */
  readonly at: number;
  /** The targets it may be beside: centres of joists on the hole's line. */
  readonly near: readonly number[];
  /** For a hole that met timber: the variance of the reading that stands for it in the fit, mm2. `undefined`: it met none. */
  readonly hit: number | undefined;
}

/** How far off a joist a hole may be and still speak of it: standard deviations, beside half of its width. */
const REACH = 4.5;

/** Holes beside joists, and what the fit says of the centres beside them. */
export interface HolesBeside {
  readonly holes: readonly Hole[];
  readonly targets: readonly Target[];
  readonly means: readonly number[];
  readonly covariance: (i: number, j: number) => number;
  /** How many misses are clear of every joist. */
  readonly clear: number;
}

/** Finds the holes that speak of joists: one pass through the fit for all of them. */
export function holesOf(fit: Fit, sight: Sight, placing: Placing): HolesBeside {
  const { system, setting } = fit;
  const asked: Target[] = [];
  const indexOf = (joist: number, v: number): number => {
    const known = asked.findIndex((target) => target.joist === joist && target.v === v);
    return known >= 0 ? known : asked.push({ of: 'centre', joist, v }) - 1;
  };
  const beside = joistsBeside(fit);
  const missed = sight.misses.map(({ u, v }) => ({
    at: u - sight.near,
    near: beside(u - sight.near, v).map((joist) => indexOf(joist, v)),
    hit: undefined,
  }));
  const hits = sight.readings.flatMap(({ u, v, variance, anywhere }, i) => {
    const place = placing.places[i];
    return anywhere && place ? [{ at: u - sight.near, near: [indexOf(place.joist - system.origin, v)], hit: variance }] : [];
  });
  const { means, covariance } = predict(fit, asked);
  const within = system.width / 2 + 2 * system.widthSd + system.assumptions.wander + setting.straying;
  const reach = asked.map((_, i) => within + REACH * Math.sqrt(Math.max(0, covariance(i, i))));
  const near = missed.map(({ at, ...rest }) => ({
    ...rest,
    at,
    near: rest.near.filter((i) => Math.abs(means[i] - at) <= reach[i]),
  }));
  const speaking = [...near.filter((hole) => hole.near.length > 0), ...hits];
  // Only the centres that some hole is near are kept.
  const kept = asked.map((_, i) => i).filter((i) => speaking.some((hole) => hole.near.includes(i)));
  return {
    holes: speaking.map((hole) => ({ ...hole, near: hole.near.map((i) => kept.indexOf(i)) })),
    targets: kept.map((i) => asked[i]),
    means: kept.map((i) => means[i]),
    covariance: (i, j) => covariance(kept[i], kept[j]),
    clear: missed.length + hits.length - speaking.length,
  };
}

/** The two joists that a hole at a place may be beside, the nearer first. */
function joistsBeside(fit: Fit): (at: number, v: number) => number[] {
  const nodeAt = nodeMeansOf(fit);
  const spacing = Math.max(50, nodeAt(1) - nodeAt(0));
  const sloped = fit.system.v.some((v) => v !== 0);
  const slopes = sloped ? predict(fit, [slope('skew'), slope('fan')]).means : [0, 0];
  return (at, v) => {
    const centre = (joist: number): number => nodeAt(joist) + v * (slopes[0] + slopes[1] * joist);
    let joist = Math.round((at - nodeAt(0)) / spacing);
    while (Math.abs(centre(joist + 1) - at) < Math.abs(centre(joist) - at)) joist++;
    while (Math.abs(centre(joist - 1) - at) < Math.abs(centre(joist) - at)) joist--;
    return [joist, centre(joist) < at ? joist + 1 : joist - 1];
  };
}

const slope = (of: 'skew' | 'fan'): Target => ({ of, joist: 0, v: 0 });
