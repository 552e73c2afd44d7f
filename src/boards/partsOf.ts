import { type Frame, frameOf } from '../joists/frame.js';
import type { LocatedZone } from '../joists/locateZones.js';
import { fromGrid } from '../survey/grid.js';
import { isWithin } from '../survey/isWithin.js';
import { extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import type { Opening } from '../survey/room.js';
import type { Side } from '../survey/traceRings.js';
import { type BoardedArea, boardedAreas } from './boardedArea.js';
import { clearRings } from './clearRings.js';
import { compareInOrder } from './compareInOrder.js';
import { type IntoPart, onGrid } from './lockedPieces.js';
import type { Ring } from './overlayRings.js';
import {
  type Extent,
  type PlacedJoist,
  type PlacedOpening,
  placeJoists,
  placeOpenings,
  pointIn,
  ringIn,
  ringOf,
  type View,
} from './partView.js';
import type { PlacementRules } from './placementRules.js';
import { demandApart, keyOf, type Standing, type StandingRequest, standingOf } from './standing.js';

/**
 * A part of the ceiling that is boarded by joists of its own, in whole grid steps and in coordinates of its own: `u` runs from 0
 * across the joists, `v` from 0 along them; rings have `u` as x and `v` as y. Of the four ways to look at it (from either
 * side, from either end) the one whose numbers come first is taken, so that a mirrored room is the same problem and gets the
 * same answer.
 */
export interface Part {
  /** Id of its zone; absent for what lies outside all zones. */
  readonly zone?: string;
  readonly frame: Frame;
  readonly mirrored: { readonly u: boolean; readonly v: boolean };
  /** From wall to wall at the widest. */
  readonly length: number;
  readonly depth: number;
  /** Those that run along the part, in order across it. */
  readonly joists: readonly PlacedJoist[];
  /** Whether every joist keeps the same place from one end of the part to the other. */
  readonly parallel: boolean;
  readonly openings: readonly PlacedOpening[];
  /**
   * Where boards may lie when this gap is left at the walls along the rows; anticlockwise about it, clockwise about holes. Absent
   * for a rectangle between four walls without openings.
   */
  readonly clear?: (gap: number) => readonly Ring[];
  /** Rows that are pinned, from the low side up, and which of the caller's list is the first of them. */
  readonly rowWidths: { readonly widths: readonly number[]; readonly from: number };
  /** What is there already. */
  readonly standing: Standing;
  /** From the plan, grid steps. */
  readonly into: IntoPart;
  /** Back to the plan, mm. */
  readonly toPlan: (u: number, v: number) => Point;
}

/** The parts of a ceiling. `rowWidths`: rows that are pinned, through all parts, in each of them from its low wall on the plan. */
export function partsOf(
  located: readonly LocatedZone[],
  openings: readonly Opening[],
  rules: PlacementRules,
  rowWidths: readonly number[] = [],
  request: StandingRequest = {},
): Part[] {
  let count = 0;
  let from = 0;
  const areas = boardedAreas(located);
  const { locked = [] } = request;
  const parts = areas.map((area, index) => {
    const extent = extentIn(frameOf(located[index].direction), area);
    const left = rowWidths.slice(from);
    const pinned = index === areas.length - 1 ? left : thatFit(left, extent.high - extent.low, rules.edgeGap);
    const part = partOf(located[index], area, extent, { openings, rules, request }, { widths: pinned, from }, count);
    count += part.joists.length;
    from += pinned.length;
    return part;
  });
  demandApart(locked, parts);
  return parts;
}

/** As many widths from the beginning of a list as go into a depth. */
function thatFit(widths: readonly number[], depth: number, edgeGap: number): readonly number[] {
  let used = -edgeGap;
  const count = widths.findIndex((width) => {
    used += width + edgeGap;
    return used > depth;
  });
  return count < 0 ? widths : widths.slice(0, count);
}

function extentIn({ direction }: Frame, { rings }: BoardedArea): Extent {
  const { left, right, low, high } = extentOf(rings[0]);
  return direction === 'y' ? { near: left, far: right, low, high } : { near: low, far: high, low: left, high: right };
}

/** What every part is about. */
interface About {
  readonly openings: readonly Opening[];
  readonly rules: PlacementRules;
  readonly request: StandingRequest;
}

function partOf(
  { zone, direction, joists }: LocatedZone,
  area: BoardedArea,
  extent: Extent,
  { openings, rules: { wallGap }, request }: About,
  pinned: Part['rowWidths'],
  firstIndex: number,
): Part {
  const frame = frameOf(direction);
  const { near, far, low, high } = extent;
  const plain = isPlain(area, openings);
  const views = [false, true].flatMap((u) => [false, true].map((v): View => ({ frame, mirrored: { u, v }, ...extent })));
  const depth = high - low;
  const placed = views.map((view) => ({
    view,
    joists: placeJoists(joists, view, firstIndex),
    openings: placeOpenings(openings, view),
    rowWidths: view.mirrored.v ? [...pinned.widths].reverse() : pinned.widths,
    corners: plain ? [] : firstCornerFirst(ringIn(view)(area.rings[0])),
    standing: standingOf(request, isHere(area), pointIn(view)),
  }));
  const keys = placed.map((each) => [
    ...each.rowWidths,
    ...each.corners.flatMap(({ x, y }) => [x, y]),
    ...each.joists.flatMap(({ centre, joist, ...its }) => [centre(0), centre(depth), its.low, its.high, joist.width, joist.sd]),
    ...each.openings.flatMap((opening) => [opening.near, opening.far, opening.low, opening.high]),
    ...keyOf(each.standing),
  ]);
  let best = 0;
  for (let i = 1; i < keys.length; i++) if (compareInOrder(keys[i], keys[best]) < 0) best = i;
  const { view, ...chosen } = placed[best];
  const { mirrored } = view;
  return {
    ...(zone !== undefined && { zone }),
    frame,
    mirrored,
    length: far - near,
    depth,
    joists: chosen.joists,
    parallel: chosen.joists.every(({ centre }) => centre(0) === centre(depth)),
    openings: chosen.openings,
    ...(!plain && { clear: clearIn(view, area, openings, wallGap) }),
    rowWidths: { widths: chosen.rowWidths, from: pinned.from },
    standing: chosen.standing,
    into: pointIn(view),
    toPlan: (u, v) => {
      const { x, y } = frame.back(mirrored.u ? far - u : near + u, mirrored.v ? high - v : low + v);
      return { x: fromGrid(x), y: fromGrid(y) };
    },
  };
}

/** Whether the middle of an outline is in an area. */
const isHere =
  ({ rings: [ring] }: BoardedArea) =>
  (outline: readonly Point[]): boolean => {
    const { left, right, low, high } = extentOf(onGrid(outline));
    return isWithin(ring, { x: Math.round((left + right) / 2), y: Math.round((low + high) / 2) });
  };

function isPlain({ rings, isBorder }: BoardedArea, openings: readonly Opening[]): boolean {
  const [ring] = rings;
  if (openings.length > 0 || rings.length > 1 || ring.length !== 4) return false;
  return ring.every((a, i) => {
    const b = ring[(i + 1) % 4];
    return (a.x === b.x || a.y === b.y) && !isBorder([a, b]);
  });
}

/** The same ring wherever it was begun. */
function firstCornerFirst(ring: Ring): Ring {
  let first = 0;
  for (let i = 1; i < ring.length; i++) {
    if (ring[i].y < ring[first].y || (ring[i].y === ring[first].y && ring[i].x < ring[first].x)) first = i;
  }
  return [...ring.slice(first), ...ring.slice(0, first)];
}

/** Where boards may lie, worked out once for each gap. */
function clearIn(
  view: View,
  area: BoardedArea,
  openings: readonly Opening[],
  wallGap: PlacementRules['wallGap'],
): (gap: number) => readonly Ring[] {
  const known = new Map<number, readonly Ring[]>();
  const alongRows = ([a, b]: Side): boolean => {
    const [du, dv] = view.frame.direction === 'y' ? [b.x - a.x, b.y - a.y] : [b.y - a.y, b.x - a.x];
    return Math.abs(du) > Math.abs(dv);
  };
  const holes = openings.map(ringOf);
  return (gap) => {
    const rings =
      known.get(gap) ?? clearRings(area, holes, (side) => (alongRows(side) ? gap : wallGap.nominal)).map(ringIn(view));
    known.set(gap, rings);
    return rings;
  };
}
