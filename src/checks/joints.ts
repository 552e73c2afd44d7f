import type { Facing } from './facings.js';

/**
 * Where two pieces meet: their ends, or, in the view along the joists, their long edges. `first` has the lesser coordinate
 * across the joint. Grid steps.
 */
export interface Joint {
  readonly first: number;
  readonly second: number;
  /** Along the joint. */
  readonly low: number;
  readonly high: number;
  /** Length over which they face each other. */
  readonly length: number;
  /** Where the two sides are at the joint's low and high end. */
  readonly firstLow: number;
  readonly secondLow: number;
  readonly firstHigh: number;
  readonly secondHigh: number;
  /** Widest gap; negative where they overlap. */
  readonly gap: number;
  /** The joint section by section, from low to high. */
  readonly parts: readonly Facing[];
}

/**
 * Joints in the order in which they are met. Sides that run across the view are no part of one: they show in the other view. Nor is a
 * stretch shorter than `least`, as where two boards pass each other at the tip of a wall.
 */
export function jointsOf(facings: readonly Facing[], least = 0): Joint[] {
  const joints = new Map<string, Facing[]>();
  for (const facing of facings) {
    const { piece, side, meets, other, steep } = facing;
    if (side !== 'high' || meets !== 'piece' || !steep) continue;
    const key = `${piece} ${other}`;
    const parts = joints.get(key);
    if (parts) parts.push(facing);
    else joints.set(key, [facing]);
  }
  return [...joints.values()].flatMap((parts) => {
    const long = stretchesOf(parts).filter((stretch) => stretch[stretch.length - 1].high - stretch[0].low >= least);
    return long.length > 0 ? [jointOf(long.flat())] : [];
  });
}

/** Parts that follow on each other, together. */
export function stretchesOf<P extends { readonly low: number; readonly high: number }>(parts: readonly P[]): P[][] {
  const stretches: P[][] = [];
  for (const part of parts) {
    const stretch = stretches[stretches.length - 1];
    if (stretch && stretch[stretch.length - 1].high === part.low) stretch.push(part);
    else stretches.push([part]);
  }
  return stretches;
}

function jointOf(parts: readonly Facing[]): Joint {
  const [foot, head] = [parts[0], parts[parts.length - 1]];
  return {
    first: foot.piece,
    second: foot.other,
    low: foot.low,
    high: head.high,
    length: parts.reduce((sum, { low, high }) => sum + high - low, 0),
    firstLow: foot.ownLow,
    secondLow: foot.otherLow,
    firstHigh: head.ownHigh,
    secondHigh: head.otherHigh,
    gap: parts.reduce(
      (gap, { ownLow, ownHigh, otherLow, otherHigh }) => Math.max(gap, otherLow - ownLow, otherHigh - ownHigh),
      -Infinity,
    ),
    parts,
  };
}
