import type { Frame } from '../joists/frame.js';
import type { Bound } from './bounds.js';
import type { Say } from './words.js';

/** The four sides of a part of the ceiling by what bounds them: near and far across the joists, low and high along them. */
export interface SideNames {
  readonly near: string;
  readonly far: string;
  readonly low: string;
  readonly high: string;
}

/** Names each side after the outermost of the bounds that face it; of several, after the longest. */
export function sideNames(bounds: readonly Bound[], frame: Frame, say: Say): SideNames {
  const sides = bounds.map(({ name, from, to }) => {
    const [a, b] = [frame.into(from), frame.into(to)];
    // The part lies on the left of its bounds on the plan; joists along x mirror it.
    const turn = frame.direction === 'y' ? 1 : -1;
    const out = { u: (b.v - a.v) * turn, v: (a.u - b.u) * turn };
    return { name, out, middle: { u: (a.u + b.u) / 2, v: (a.v + b.v) / 2 }, steep: Math.abs(out.v) > Math.abs(out.u) };
  });
  const outermost = (axis: 'u' | 'v', way: 1 | -1): string | undefined => {
    const facing = sides.filter(({ out, steep }) => out[axis] * way > 0 && steep === (axis === 'v'));
    const rank = ({ out, middle }: (typeof sides)[number]): number[] => [middle[axis] * way, out[axis] * way];
    return facing.reduce<(typeof sides)[number] | undefined>((best, each) => {
      if (best === undefined) return each;
      const [[far, long], [bestFar, bestLong]] = [rank(each), rank(best)];
      return far > bestFar || (far === bestFar && long > bestLong) ? each : best;
    }, undefined)?.name;
  };
  return {
    near: outermost('u', -1) ?? say('side.near'),
    far: outermost('u', 1) ?? say('side.far'),
    low: outermost('v', -1) ?? say('side.low'),
    high: outermost('v', 1) ?? say('side.high'),
  };
}
