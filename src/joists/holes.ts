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

/** The holes beside joists, the centres beside them, and how many misses are clear of every joist. */
export function holesOf(fit: Fit, sight: Sight, placing: Placing): { holes: Hole[]; targets: Target[]; clear: number } {
  const targets: Target[] = [];
  const holes: Hole[] = [];
  let clear = 0;
  const indexOf = (joist: number, v: number): number => {
    const known = targets.findIndex((target) => target.joist === joist && target.v === v);
    return known >= 0 ? known : targets.push({ of: 'centre', joist, v }) - 1;
  };
  const beside = joistsBeside(fit);
  for (const { u, v } of sight.misses) {
    const at = u - sight.near;
    const joists = beside(at, v);
    if (joists.length === 0) clear++;
    else holes.push({ at, near: joists.map((joist) => indexOf(joist, v)), hit: undefined });
  }
  sight.readings.forEach(({ u, v, variance, anywhere }, i) => {
    const place = placing.places[i];
    if (anywhere && place) holes.push({ at: u - sight.near, near: [indexOf(place.joist - fit.system.origin, v)], hit: variance });
  });
  return { holes, targets, clear };
}

/** The joists that a hole at a place may be beside. */
function joistsBeside(fit: Fit): (at: number, v: number) => number[] {
  const { system, setting } = fit;
  const nodeAt = nodeMeansOf(fit);
  const spacing = Math.max(50, nodeAt(1) - nodeAt(0));
  const sloped = system.v.some((v) => v !== 0);
  const slopes = sloped ? predict(fit, [slope('skew'), slope('fan')]).means : [0, 0];
  return (at, v) => {
    const centre = (joist: number): number => nodeAt(joist) + v * (slopes[0] + slopes[1] * joist);
    let joist = Math.round((at - nodeAt(0)) / spacing);
    while (Math.abs(centre(joist + 1) - at) < Math.abs(centre(joist) - at)) joist++;
    while (Math.abs(centre(joist - 1) - at) < Math.abs(centre(joist) - at)) joist--;
    const candidates = [joist, centre(joist) < at ? joist + 1 : joist - 1];
    const { means, covariance } = predict(
      fit,
      candidates.map((each): Target => ({ of: 'centre', joist: each, v })),
    );
    const within = system.width / 2 + 2 * system.widthSd + system.assumptions.wander + setting.straying;
    return candidates.filter((_, i) => Math.abs(means[i] - at) <= within + REACH * Math.sqrt(Math.max(0, covariance(i, i))));
  };
}

const slope = (of: 'skew' | 'fan'): Target => ({ of, joist: 0, v: 0 });
