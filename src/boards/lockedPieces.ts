import * as z from 'zod/mini';
import { toGrid } from '../survey/grid.js';
import { problem, refuse } from '../survey/inputError.js';
import { extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import { coordinate, label, outlineSchema } from '../survey/schemas.js';

/** A piece that is up already. A piece of a layout that this library returned will do. */
export interface LockedPiece {
  readonly id?: string;
  /** As it lies on the ceiling, plan coordinates. */
  readonly outline: readonly Point[];
  readonly holes?: readonly (readonly Point[])[];
  /** The board that it was cut from: pieces that name the same board share it. One of its own when not given. */
  readonly board?: string;
  /** Id of that board's stock; the first of `boards` that is large enough when not given. */
  readonly stock?: string;
  /** Its place on the board, mm from the board's low end and low edge; one after another when not given. */
  readonly at?: { readonly along: number; readonly across: number };
}

/** What this library itself returned: known fields are checked, fields it does not read are let through. */
export const lockedPieceSchema: z.ZodMiniType<LockedPiece> = z.looseObject({
  id: z.optional(label),
  outline: outlineSchema,
  holes: z.optional(z.array(outlineSchema).check(z.maxLength(500))),
  board: z.optional(label),
  stock: z.optional(label),
  at: z.optional(z.looseObject({ along: coordinate, across: coordinate })),
});

/** A stretch of the ceiling in the problem's coordinates, grid steps. */
export interface Stretch {
  readonly near: number;
  readonly far: number;
  readonly low: number;
  readonly high: number;
}

/** Into the problem's coordinates: grid steps of the plan in, `u` and `v` out. */
export type IntoProblem = (point: Point) => { readonly u: number; readonly v: number };

/** The rectangle about an outline. */
export function stretchOf(outline: readonly Point[], into: IntoProblem): Stretch {
  const { left, right, low, high } = extentOf(
    outline.map(({ x, y }) => {
      const { u, v } = into({ x: toGrid(x), y: toGrid(y) });
      return { x: u, y: v };
    }),
  );
  return { near: left, far: right, low, high };
}

/** Pieces that are up, each about where it is; refuses those that lie over each other or outside the room. */
export function lockedStretches(
  locked: readonly LockedPiece[],
  into: IntoProblem,
  room: { readonly length: number; readonly depth: number },
): Stretch[] {
  const stretches = locked.map(({ outline }) => stretchOf(outline, into));
  for (const [i, { near, far, low, high }] of stretches.entries()) {
    const path = `locked[${i}].outline`;
    if (near < 0 || low < 0 || far > room.length || high > room.depth) {
      refuse(problem('outside-room', path, 'a piece inside the room', 'one that reaches beyond a wall'));
    }
    const over = stretches.findIndex(
      (other, k) => k < i && near < other.far && other.near < far && low < other.high && other.low < high,
    );
    if (over >= 0) refuse(problem('overlap', path, 'a piece clear of the others', `one that lies over locked[${over}]`));
  }
  return stretches;
}
