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
}

/** Joints in the order in which they are met. */
export function jointsOf(facings: readonly Facing[]): Joint[] {
  const joints = new Map<string, Joint>();
  for (const { piece, side, low, high, meets, other, ownLow, ownHigh, otherLow, otherHigh } of facings) {
    if (side !== 'high' || meets !== 'piece') continue;
    const key = `${piece} ${other}`;
    const before = joints.get(key);
    const gap = Math.max(otherLow - ownLow, otherHigh - ownHigh);
    joints.set(key, {
      first: piece,
      second: other,
      low: before?.low ?? low,
      high,
      length: (before?.length ?? 0) + high - low,
      firstLow: before?.firstLow ?? ownLow,
      secondLow: before?.secondLow ?? otherLow,
      firstHigh: ownHigh,
      secondHigh: otherHigh,
      gap: Math.max(before?.gap ?? gap, gap),
    });
  }
  return [...joints.values()];
}
