import * as z from 'zod/mini';
import { toGrid } from '../survey/grid.js';
import { extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import { coordinate, label, outlineSchema } from '../survey/schemas.js';
import type { Box } from './box.js';

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

/** Into the coordinates of a part of the ceiling; grid steps. */
export type IntoPart = (point: Point) => Point;

/** The rectangle about an outline in mm, in the coordinates of a part. */
export function boxOf(outline: readonly Point[], into: IntoPart): Box {
  const { left, right, low, high } = extentOf(onGrid(outline).map(into));
  return { near: left, far: right, low, high };
}

export const onGrid = (outline: readonly Point[]): Point[] => outline.map(({ x, y }) => ({ x: toGrid(x), y: toGrid(y) }));
