import { toGrid } from '../survey/grid.js';
import type { Piece } from './boardLayout.js';
import { type IntoProblem, lockedStretches, type Stretch, stretchOf } from './lockedPieces.js';
import type { PlacementRequest } from './placementRequest.js';

/** What a plan that was made before asks of this one, beside the request. */
export interface Earlier {
  /** Pieces that are to be laid where they were, each cut from a board yet. */
  readonly kept?: readonly Piece[];
  /** Whether butt joints must stay off the joists along which the old ceiling has a joint there. */
  readonly offOldJoints?: boolean;
  /** Ids that boards before had: no new board takes them. */
  readonly boardIds?: readonly string[];
}

/** A request with what was there before. */
export type LayingRequest = PlacementRequest & Earlier;

/** What is there already, in the problem's coordinates. */
export interface Standing {
  /** Pieces that are up, in the order of the request. */
  readonly up: readonly Stretch[];
  /** Pieces that are to be laid where they were: `near` and `far` are where their ends were, by their nominal length. */
  readonly kept: readonly Stretch[];
  /** Joints beneath that butt joints must not lie over. */
  readonly beneath: readonly Stretch[];
}

export function standingOf(
  { locked = [], kept = [], offOldJoints = false, lining = [] }: LayingRequest,
  into: IntoProblem,
  room: { readonly length: number; readonly depth: number },
): Standing {
  return {
    up: lockedStretches(locked, into, room),
    kept: kept.map((piece) => nominalStretch(piece, into)),
    beneath: offOldJoints ? lining.flatMap(({ joints = [] }) => joints.map((line) => stretchOf(line, into))) : [],
  };
}

/** Where a piece lies, its ends where its nominal length puts them. */
export function nominalStretch({ outline, ends }: Pick<Piece, 'outline' | 'ends'>, into: IntoProblem): Stretch {
  const [low, high] = ends.map(({ position }) => into({ x: toGrid(position), y: toGrid(position) }).u);
  return { ...stretchOf(outline, into), near: Math.min(low, high), far: Math.max(low, high) };
}

/** Numbers that tell one view of it from another, in whatever order it was given. */
export const keyOf = ({ up, kept, beneath }: Standing): number[] =>
  [up, kept, beneath].flatMap((stretches) =>
    [...stretches]
      .sort((a, b) => a.near - b.near || a.low - b.low || a.far - b.far || a.high - b.high)
      .flatMap(({ near, far, low, high }) => [near, far, low, high]),
  );

/** Whether there is anything that makes rows differ. */
export const isBare = ({ up, kept, beneath }: Standing): boolean => up.length + kept.length + beneath.length === 0;
