import * as z from 'zod/mini';
import type { Point } from '../survey/point.js';
import { coordinate, label, outlineSchema, pointSchema, positive } from '../survey/schemas.js';

/** One screw, plan coordinates in mm. What it says of itself is checked where it is present. */
export interface FixingToCheck {
  readonly x: number;
  readonly y: number;
  readonly piece?: string;
  readonly joist?: string;
}

/** Screws, or what this library returned of them. */
export type FixingsToCheck =
  | readonly FixingToCheck[]
  | {
      readonly positions: readonly FixingToCheck[];
      readonly count?: number;
      readonly lines?: readonly { readonly piece: string; readonly joist: string; readonly count: number }[];
    };

/** Somewhere no screw may go, plan coordinates in mm. */
export type ClosedZone =
  | { readonly id?: string; readonly outline: readonly Point[] }
  | { readonly id?: string; readonly centre: Point; readonly diameter: number };

const fixing = z.looseObject({
  x: coordinate,
  y: coordinate,
  piece: z.optional(label),
  joist: z.optional(label),
});

const positions = z.array(fixing).check(z.maxLength(200_000));
const count = z.int().check(z.gte(0), z.lte(1_000_000));
const line = z.looseObject({ piece: label, joist: label, count });

export const fixingsSchema: z.ZodMiniType<FixingsToCheck> = z.union([
  positions,
  z.looseObject({ positions, count: z.optional(count), lines: z.optional(z.array(line).check(z.maxLength(200_000))) }),
]) as unknown as z.ZodMiniType<FixingsToCheck>;

export const closedZonesSchema: z.ZodMiniType<readonly ClosedZone[]> = z
  .array(
    z.union([
      z.strictObject({ id: z.optional(label), outline: outlineSchema }),
      z.strictObject({ id: z.optional(label), centre: pointSchema, diameter: positive }),
    ]),
  )
  .check(z.maxLength(1000));
