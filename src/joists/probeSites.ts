import { fromGrid, toGrid } from '../survey/grid.js';
import { distanceTo, isWithin } from '../survey/isWithin.js';
import { corners, extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import type { Opening } from '../survey/room.js';
import { frameOf } from './frame.js';
import type { Inference } from './inferJoists.js';
import { frameExtent } from './joistLine.js';

/** Where a person can put a hole. */
export interface Reach {
  /** Places are whole steps from the room's least coordinates, mm; 10 when not given. */
  readonly step?: number;
  /** The part of the room that can be reached; all of it when not given. */
  readonly outline?: readonly Point[];
  /** Lines across the joists to keep to, plan coordinates along the joists, mm; those of the marks when not given. */
  readonly along?: readonly number[];
}

/** A place for a hole, plan coordinates in mm: `u` across the joists, `v` along them. */
export interface Site {
  readonly u: number;
  readonly v: number;
}

/** How fine a tape is read with one hand, mm; common practice, no source. */
const STEP = 10;
/** A drill and a hand need this much room beside a wall or an opening, mm; common practice, no source. */
const CLEAR = 20;
/** Lines of marks that are kept to. */
const LINES = 2;

/** Tells whether a hole can be put at a place of the room. */
export function reachable({ room, marks, direction }: Inference, reach: Reach): (site: Site) => boolean {
  const frame = frameOf(direction);
  const ring = corners(room.outline);
  const limits = reach.outline && corners(reach.outline);
  const shut = (room.openings ?? []).map(ringOf);
  const clear = toGrid(CLEAR);
  // A hole that is there already has nothing more to say.
  const holes = marks.filter(({ kind, found }) => found === false || kind === 'probe' || kind === undefined);
  const apart = Math.min(STEP, reach.step ?? STEP) / 2;
  return ({ u, v }) => {
    const { x, y } = frame.back(u, v);
    const point = { x: toGrid(x), y: toGrid(y) };
    if (!isWithin(ring, point) || distanceTo(ring, point) < clear) return false;
    if (limits && !isWithin(limits, point)) return false;
    if (shut.some((opening) => isWithin(opening, point) || distanceTo(opening, point) < clear)) return false;
    return holes.every((hole) => Math.abs(hole.x - x) >= apart || Math.abs(hole.y - y) >= apart);
  };
}

/** A round opening is taken for the square around it. */
function ringOf(opening: Opening): Point[] {
  if ('outline' in opening) return corners(opening.outline);
  const { centre, diameter } = opening;
  const half = diameter / 2;
  const sides = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ];
  return sides.map(([i, j]) => ({ x: toGrid(centre.x + i * half), y: toGrid(centre.y + j * half) }));
}

/** Every place on the lines that are kept to, line by line and in order across the joists. */
export function probeSites(inference: Inference, reach: Reach): Site[] {
  const within = reachable(inference, reach);
  const extent = frameExtent(inference.room, inference.direction);
  const step = toGrid(reach.step ?? STEP);
  const across: number[] = [];
  for (let u = extent.near + step; u < extent.far; u += step) across.push(fromGrid(u));
  const onLine = (v: number): Site[] => across.map((u) => ({ u, v })).filter(within);
  const sites = linesOf(inference, reach).flatMap(onLine);
  if (sites.length > 0) return sites;
  // No line of the marks can be reached: the one with the most places on it.
  const length = extent.high - extent.low;
  const lines = [4, 2, 6, 1, 7, 3, 5].map((eighths) =>
    onLine(snapped(fromGrid(extent.low + (length * eighths) / 8), extent.low, step)),
  );
  return lines.reduce((best, line) => (line.length > best.length ? line : best));
}

/** The place nearest to one that was asked for, moved along the joist by whole steps, if it is within this distance. */
export function siteNear(
  inference: Inference,
  reach: Reach,
  within: (site: Site) => boolean,
  at: (v: number) => number,
  v: number,
  farthest: number,
): Site | undefined {
  const extent = frameExtent(inference.room, inference.direction);
  const step = toGrid(reach.step ?? STEP);
  const lines = reach.along && [...reach.along].sort((a, b) => Math.abs(a - v) - Math.abs(b - v) || a - b);
  const place = (line: number): Site => ({ u: snapped(at(line), extent.near, step), v: line });
  if (lines) return lines.map(place).find(within);
  for (let away = 0; away <= farthest; away += fromGrid(step)) {
    for (const side of away === 0 ? [0] : [-away, away]) {
      const site = place(snapped(v + side, extent.low, step));
      if (within(site)) return site;
    }
  }
  return undefined;
}

const snapped = (mm: number, from: number, step: number): number =>
  fromGrid(from + Math.round((toGrid(mm) - from) / step) * step);

/** The lines that most marks are on, plan coordinates along the joists. */
function linesOf({ room, marks, direction }: Inference, { along }: Reach): number[] {
  if (along) return [...along];
  const frame = frameOf(direction);
  const { low, high } = extentOf(
    corners(room.outline)
      .map(frame.into)
      .map(({ u, v }) => ({ x: u, y: v })),
  );
  const lines: { v: number; marks: number }[] = [];
  for (const mark of marks) {
    const { v } = frame.into(mark);
    const line = lines.find((each) => Math.abs(each.v - v) <= CLEAR);
    if (line) line.marks += 1;
    else lines.push({ v, marks: 1 });
  }
  return lines
    .filter(({ v }) => toGrid(v) > low && toGrid(v) < high)
    .sort((a, b) => b.marks - a.marks || a.v - b.v)
    .slice(0, LINES)
    .map(({ v }) => v);
}
