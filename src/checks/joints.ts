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

/** Joints in the order in which they are met. Sides that run across the view are no part of one: they show in the other view. */
export function jointsOf(facings: readonly Facing[]): Joint[] {
  const joints = new Map<string, Facing[]>();
  for (const facing of facings) {
    const { piece, side, meets, other, steep } = facing;
    if (side !== 'high' || meets !== 'piece' || !steep) continue;
    const key = `${piece} ${other}`;
    const parts = joints.get(key);
    if (parts) parts.push(facing);
    else joints.set(key, [facing]);
  }
  return [...joints.values()].map(jointOf);
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
