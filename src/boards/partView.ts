import { centreAt, type Frame } from '../joists/frame.js';
import { toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import { anticlockwise, corners, extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import type { Opening } from '../survey/room.js';
import type { Ring } from './overlayRings.js';
import { roundRing } from './roundRing.js';

export interface Extent {
  readonly near: number;
  readonly far: number;
  readonly low: number;
  readonly high: number;
}

/** From the walls of a part, on the grid and in the frame of its joists. */
export interface View extends Extent {
  readonly frame: Frame;
  readonly mirrored: { readonly u: boolean; readonly v: boolean };
}

/** One joist in the coordinates of its part. */
export interface PlacedJoist {
  readonly joist: Joist;
  /** Among all joists of the problem. */
  readonly index: number;
  /** Where its centre line is, `v` being the distance along it. */
  readonly centre: (v: number) => number;
  readonly low: number;
  readonly high: number;
}

/** An opening's extent in the coordinates of a part. */
export interface PlacedOpening {
  readonly opening: Opening;
  readonly near: number;
  readonly far: number;
  readonly low: number;
  readonly high: number;
}

export const pointIn =
  ({ frame, mirrored, near, far, low, high }: View) =>
  (point: Point): Point => {
    const { u, v } = frame.into(point);
    return { x: mirrored.u ? far - u : u - near, y: mirrored.v ? high - v : v - low };
  };

/** A ring on the plan as one of a part: it turns the same way in both. */
export function ringIn(view: View): (ring: Ring) => Ring {
  const turnedOver = (view.frame.direction === 'x') !== (view.mirrored.u !== view.mirrored.v);
  const into = pointIn(view);
  return (ring) => {
    const points = ring.map(into);
    return turnedOver ? points.reverse() : points;
  };
}

export const ringOf = (opening: Opening): Ring =>
  'outline' in opening ? anticlockwise(corners(opening.outline)) : roundRing(opening.centre, opening.diameter);

/** Timbers that run along the part; noggings and trimmers across it carry no butt joints. */
export function placeJoists(joists: readonly Joist[], view: View, firstIndex: number): PlacedJoist[] {
  const { frame, mirrored, near, far, low, high } = view;
  const middle = Math.round((high - low) / 2);
  return joists
    .flatMap((joist) => {
      const ends = [joist.start, joist.end].map(({ x, y }) => frame.into({ x: toGrid(x), y: toGrid(y) }));
      const [start, end] = ends;
      if (Math.abs(end.u - start.u) >= Math.abs(end.v - start.v)) return [];
      const [from, to] = [Math.min(start.v, end.v) - low, Math.max(start.v, end.v) - low];
      const centre = (v: number): number => {
        const u = centreAt(joist, frame, mirrored.v ? high - v : low + v);
        return mirrored.u ? far - u : u - near;
      };
      return [{ joist, centre, low: mirrored.v ? high - low - to : from, high: mirrored.v ? high - low - from : to }];
    })
    .sort((a, b) => a.centre(middle) - b.centre(middle) || (a.joist.id < b.joist.id ? -1 : 1))
    .map((placed, index) => ({ ...placed, index: firstIndex + index }));
}

export function placeOpenings(openings: readonly Opening[], view: View): PlacedOpening[] {
  const into = ringIn(view);
  return openings
    .map((opening): PlacedOpening => {
      const { left, right, low, high } = extentOf(into(ringOf(opening)));
      return { opening, near: left, far: right, low, high };
    })
    .sort((a, b) => a.near - b.near || a.low - b.low || a.far - b.far || a.high - b.high);
}
