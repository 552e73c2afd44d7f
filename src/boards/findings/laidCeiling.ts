import { centreAt, type Frame, type FramePoint, frameOf } from '../../joists/frame.js';
import type { LocatedZone } from '../../joists/locateZones.js';
import type { RuleSet } from '../../rules/ruleSet.js';
import type { BoardStock } from '../../survey/boardStock.js';
import { toGrid } from '../../survey/grid.js';
import type { Direction, Joist } from '../../survey/joist.js';
import type { Layer } from '../../survey/layer.js';
import { corners, extentOf } from '../../survey/outline.js';
import type { Point } from '../../survey/point.js';
import type { Room } from '../../survey/room.js';
import type { Piece, Row } from '../boardLayout.js';
import type { Described } from '../describeLayout.js';
import type { PlacementProblem } from '../placementProblem.js';

/** A ceiling with its boards up, as far as what is to be said of it depends on it. */
export interface LaidCeiling {
  readonly set: RuleSet;
  readonly room: Room;
  readonly lining: readonly Layer[];
  readonly boards: readonly BoardStock[];
  /** Each zone, and what lies outside all of them. */
  readonly parts: readonly LaidPart[];
}

/** A part of the ceiling that is boarded by joists of its own, turned so that they run up; grid steps. */
export interface LaidPart {
  readonly frame: Frame;
  /** Timbers that the boards lie across, in order. */
  readonly supports: readonly Support[];
  /** Noggings, trimmers and battens that run the way of the rows. */
  readonly crosspieces: readonly Crosspiece[];
  /** The sides of the whole room, in the order of its outline. */
  readonly walls: readonly Wall[];
  /** Where the part ends at another, or at what is not boarded. */
  readonly borders: readonly Wall[];
  readonly pieces: readonly PieceUp[];
  readonly rows: readonly Row[];
}

/** A side of the room, from corner to corner. */
export type Wall = readonly [FramePoint, FramePoint];

/** A timber that boards lie across. */
export interface Support {
  readonly joist: Joist;
  /** Its ends along the joists. */
  readonly low: number;
  readonly high: number;
  readonly centre: (v: number) => number;
}

/** A timber that runs the way of the rows. */
export interface Crosspiece {
  readonly joist: Joist;
  readonly near: number;
  readonly far: number;
  /** Middle of its two ends. */
  readonly level: number;
}

/** A piece with its shape; the extent is that of the outline. */
export interface PieceUp {
  readonly piece: Piece;
  readonly outline: readonly FramePoint[];
  readonly holes: readonly (readonly FramePoint[])[];
  readonly near: number;
  readonly far: number;
  readonly low: number;
  readonly high: number;
}

export function laidCeiling({ request, set, located }: PlacementProblem, layout: Described): LaidCeiling {
  const { room, boards, lining = [] } = request;
  return {
    set,
    room,
    lining,
    boards,
    parts: groupsOf(located)
      .map((group) => laidPart(room, layout, group))
      .filter(({ pieces }) => pieces.length > 0),
  };
}

/** A zone with its joists, or all that lies outside zones. */
interface Group {
  readonly zone?: string;
  readonly joists: readonly Joist[];
  readonly direction: Direction;
  readonly rings: readonly (readonly Point[])[];
}

/** The joists of each zone, and those of all that lies outside zones. */
export function groupsOf(located: readonly LocatedZone[]): Group[] {
  const groups = new Map<string | undefined, Group>();
  for (const { zone, joists, direction, outline, holes = [] } of located) {
    const known = groups.get(zone);
    groups.set(zone, {
      ...(zone !== undefined && { zone }),
      joists: [...new Set([...(known?.joists ?? []), ...joists])],
      direction,
      rings: [...(known?.rings ?? []), outline, ...holes],
    });
  }
  return [...groups.values()];
}

function laidPart(room: Room, layout: Described, { zone, joists, direction, rings }: Group): LaidPart {
  const frame = frameOf(direction);
  const walls = wallsOf(room.outline, frame);
  const pieces = layout.pieces.filter((piece) => piece.zone === zone);
  const rows = layout.rows.filter((row) => row.zone === zone);
  return {
    frame,
    supports: supportsOf({ joists, direction }),
    crosspieces: joists.filter((joist) => !runsUp(joist, frame)).map((joist) => crosspieceOf(joist, frame)),
    walls,
    borders: rings.flatMap((ring) => wallsOf(ring, frame).filter((side) => !walls.some((wall) => liesOn(wall, side)))),
    pieces: pieces.map((piece) => pieceUp(piece, frame)),
    rows,
  };
}

/** The timbers that boards lie across. */
export function supportsOf({ joists, direction }: Pick<Group, 'joists' | 'direction'>): Support[] {
  const frame = frameOf(direction);
  return joists
    .filter((joist) => runsUp(joist, frame))
    .map((joist) => supportOf(joist, frame))
    .sort((a, b) => a.centre(a.low) + a.centre(a.high) - b.centre(b.low) - b.centre(b.high));
}

/** The sides of an outline, mm. */
export function wallsOf(outline: readonly Point[], frame: Frame): Wall[] {
  const ring = corners(outline).map(frame.into);
  return ring.map((corner, i) => [corner, ring[(i + 1) % ring.length]]);
}

/** Whether a side lies along a wall, as far as it goes. */
const liesOn = ([a, b]: Wall, side: Wall): boolean =>
  side.every(
    ({ u, v }) =>
      (b.u - a.u) * (v - a.v) === (b.v - a.v) * (u - a.u) &&
      Math.min(a.u, b.u) <= u &&
      u <= Math.max(a.u, b.u) &&
      Math.min(a.v, b.v) <= v &&
      v <= Math.max(a.v, b.v),
  );

/** Plan coordinates in mm, in a frame and on the grid. */
export const inFrame = (frame: Frame, { x, y }: Point): FramePoint => frame.into({ x: toGrid(x), y: toGrid(y) });

function runsUp({ start, end }: Joist, frame: Frame): boolean {
  const [a, b] = [inFrame(frame, start), inFrame(frame, end)];
  return Math.abs(b.u - a.u) < Math.abs(b.v - a.v);
}

function supportOf(joist: Joist, frame: Frame): Support {
  const [start, end] = [inFrame(frame, joist.start), inFrame(frame, joist.end)];
  const centre = start.u === end.u ? () => start.u : (v: number) => centreAt(joist, frame, v);
  return { joist, low: Math.min(start.v, end.v), high: Math.max(start.v, end.v), centre };
}

function crosspieceOf(joist: Joist, frame: Frame): Crosspiece {
  const [a, b] = [inFrame(frame, joist.start), inFrame(frame, joist.end)];
  return { joist, near: Math.min(a.u, b.u), far: Math.max(a.u, b.u), level: Math.round((a.v + b.v) / 2) };
}

function pieceUp(piece: Piece, frame: Frame): PieceUp {
  const outline = piece.outline.map((point) => inFrame(frame, point));
  const { left, right, low, high } = extentOf(outline.map(({ u, v }) => ({ x: u, y: v })));
  const holes = (piece.holes ?? []).map((hole) => hole.map((point) => inFrame(frame, point)));
  return { piece, outline, holes, near: left, far: right, low, high };
}
