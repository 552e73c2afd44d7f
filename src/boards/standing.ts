import { toGrid } from '../survey/grid.js';
import { problem, refuse } from '../survey/inputError.js';
import { extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import { sidesOf } from '../survey/traceRings.js';
import type { Piece } from './boardLayout.js';
import type { Box } from './box.js';
import { boxOf, type IntoPart, type LockedPiece, onGrid } from './lockedPieces.js';
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

/** What of a request tells what is there already. */
export type StandingRequest = Pick<LayingRequest, 'locked' | 'kept' | 'offOldJoints' | 'lining'>;

/** A piece that is up. */
export interface UpPiece extends Box {
  /** Among the locked pieces of the request. */
  readonly index: number;
  /** Where its ends are at its low edge and at its high edge. */
  readonly nearEnd: EndOfPiece;
  readonly farEnd: EndOfPiece;
}

export interface EndOfPiece {
  readonly low: number;
  readonly high: number;
  /** Where along the row's width the middle of the end is. */
  readonly middle: number;
}

/** A piece that is to be laid where it was, its ends where its nominal length puts them. */
export interface KeptPiece extends Box {
  /** Whether its near end and its far end meet a board: then they must be where they were to a hair. */
  readonly meetsBoard: readonly [near: boolean, far: boolean];
}

/** What is there already, in the coordinates of a part of the ceiling. */
export interface Standing {
  readonly up: readonly UpPiece[];
  readonly kept: readonly KeptPiece[];
  /** Joints beneath that butt joints must not lie over. */
  readonly beneath: readonly Box[];
}

/** What of it lies in a part; `isHere` says which of the locked pieces do. */
export function standingOf(
  { locked = [], kept = [], offOldJoints = false, lining = [] }: StandingRequest,
  isHere: (outline: readonly Point[]) => boolean,
  into: IntoPart,
): Standing {
  return {
    up: locked.flatMap(({ outline }, index) => (isHere(outline) ? [upPiece(outline, index, into)] : [])),
    kept: kept.filter(({ outline }) => isHere(outline)).map((piece) => keptPiece(piece, into)),
    beneath: offOldJoints ? lining.flatMap(({ joints = [] }) => joints.map((line) => boxOf(line, into))) : [],
  };
}

function upPiece(outline: readonly Point[], index: number, into: IntoPart): UpPiece {
  const points = onGrid(outline).map(into);
  const { left, right, low, high } = extentOf(points);
  const corner = (level: number, side: 1 | -1, other: number): number =>
    points.reduce((best, { x, y }) => (y === level && side * x > side * best ? x : best), other);
  // An end is square where it has a side across the piece, and else runs from corner to corner.
  const end = (side: 1 | -1, outermost: number, other: number): EndOfPiece => {
    const across = sidesOf(points).find(([a, b]) => a.x === outermost && b.x === outermost);
    return across === undefined
      ? { low: corner(low, side, other), high: corner(high, side, other), middle: Math.round((low + high) / 2) }
      : { low: outermost, high: outermost, middle: Math.round((across[0].y + across[1].y) / 2) };
  };
  return {
    index,
    near: left,
    far: right,
    low,
    high,
    nearEnd: end(-1, left, right),
    farEnd: end(1, right, left),
  };
}

export function keptPiece({ outline, ends }: Pick<Piece, 'outline' | 'ends'>, into: IntoPart): KeptPiece {
  const at = ends.map(({ position, meets }) => ({
    u: into({ x: toGrid(position), y: toGrid(position) }).x,
    isBoard: meets === 'board',
  }));
  const [near, far] = at[0].u <= at[1].u ? at : [at[1], at[0]];
  return { ...boxOf(outline, into), near: near.u, far: far.u, meetsBoard: [near.isBoard, far.isBoard] };
}

/** @throws InputError when pieces that are up lie over each other, or in no part of the ceiling */
export function demandApart(
  locked: readonly LockedPiece[],
  parts: readonly { readonly standing: Standing; readonly length: number; readonly depth: number }[],
): void {
  for (const index of locked.keys()) {
    const path = `locked[${index}].outline`;
    const found = parts.flatMap((part) =>
      part.standing.up.filter((each) => each.index === index).map((piece) => ({ part, piece })),
    );
    const inside = found.filter(
      ({ part, piece }) => piece.near >= 0 && piece.low >= 0 && piece.far <= part.length && piece.high <= part.depth,
    );
    if (inside.length === 0) refuse(problem('outside-room', path, 'a piece inside the room', 'one that reaches beyond a wall'));
    for (const { part, piece } of inside) {
      const over = part.standing.up.find((other) => other.index < index && overlaps(other, piece));
      if (over === undefined) continue;
      refuse(problem('overlap', path, 'a piece clear of the others', `one that lies over locked[${over.index}]`));
    }
  }
}

const overlaps = (a: Box, b: Box): boolean => a.near < b.far && b.near < a.far && a.low < b.high && b.low < a.high;

/** Numbers that tell one view of it from another, in whatever order it was given. */
export const keyOf = ({ up, kept, beneath }: Standing): number[] =>
  [up, kept, beneath].flatMap((boxes) =>
    [...boxes]
      .sort((a, b) => a.near - b.near || a.low - b.low || a.far - b.far || a.high - b.high)
      .flatMap(({ near, far, low, high }) => [near, far, low, high]),
  );

/** Whether there is anything that makes rows differ. */
export const isBare = ({ up, kept, beneath }: Standing): boolean => up.length + kept.length + beneath.length === 0;
