import type { Frame } from '../joists/frame.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { corners } from '../survey/outline.js';
import type { Point } from '../survey/point.js';

/** A place on the ceiling in the frame of the joists, whole grid steps: `u` across the joists, `v` along them. */
export interface GridPoint {
  readonly u: number;
  readonly v: number;
}

export type Ring = readonly GridPoint[];

/** Something with an area, as rings of corners: inside is where an odd number of rings lie around. */
export interface Solid {
  /**
   * `room`: what is boarded here; `whole`: the room of which that is a part. `core`: where a piece may not reach. `opening`: where
   * none need be. `filled`: a gap that the rules allow.
   */
  readonly kind: 'room' | 'whole' | 'opening' | 'core' | 'piece' | 'filled';
  /** Place in the list that it comes from. */
  readonly index: number;
  readonly rings: readonly Ring[];
}

/** A plan outline in mm as a ring in the frame. */
export const ringOf = (outline: readonly Point[], frame: Frame): Ring => corners(outline).map((point) => frame.into(point));

/** Whether every side of a ring runs along an axis. */
export const upright = (ring: Ring): boolean =>
  ring.every((from, i) => from.u === ring[(i + 1) % ring.length].u || from.v === ring[(i + 1) % ring.length].v);

/** The same thing with the axes changed over. */
export const turned = (solid: Solid): Solid => ({
  ...solid,
  rings: solid.rings.map((ring) => ring.map(({ u, v }) => ({ u: v, v: u }))),
});

/** A place of the frame as a point on the plan, mm. */
export function onPlan(frame: Frame, u: number, v: number): Point {
  const { x, y } = frame.back(Math.round(u), Math.round(v));
  return { x: fromGrid(x), y: fromGrid(y) };
}

export interface Box {
  readonly u0: number;
  readonly u1: number;
  readonly v0: number;
  readonly v1: number;
}

export function boxOf(ring: Ring): Box {
  let [u0, u1, v0, v1] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { u, v } of ring) {
    u0 = Math.min(u0, u);
    u1 = Math.max(u1, u);
    v0 = Math.min(v0, v);
    v1 = Math.max(v1, v);
  }
  return { u0, u1, v0, v1 };
}

/** How far a circle's ring may lie from the circle, mm. */
const ROUNDNESS = 0.2;

/**
 * A circle as a ring of corners within 0.2 mm of it: on the circle and so inside it, or, with `around`, outside it. Corners
 * come from the rational parametrisation of the circle, so that no engine computes them differently.
 */
export function circleRing(centre: Point, radius: number, frame: Frame, around: boolean): Ring {
  const steps = Math.min(64, Math.max(4, Math.ceil(Math.sqrt(radius / (2 * ROUNDNESS)))));
  const reach = around ? radius + ROUNDNESS : radius;
  const quarter = Array.from({ length: steps }, (_, k) => {
    const t = k / steps;
    return { along: (reach * (1 - t * t)) / (1 + t * t), up: (reach * 2 * t) / (1 + t * t) };
  });
  const turns = [
    ...quarter.map(({ along, up }) => ({ x: along, y: up })),
    ...quarter.map(({ along, up }) => ({ x: -up, y: along })),
    ...quarter.map(({ along, up }) => ({ x: -along, y: -up })),
    ...quarter.map(({ along, up }) => ({ x: up, y: -along })),
  ];
  return turns.map(({ x, y }) => frame.into({ x: toGrid(centre.x + x), y: toGrid(centre.y + y) }));
}
