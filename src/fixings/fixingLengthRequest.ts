import * as z from 'zod/mini';
import { rulesInputSchema } from '../rules/schemas.js';
import type { RulesInput } from '../rules/withRules.js';
import type { Layer } from '../survey/layer.js';
import { layerSchema } from '../survey/schemas.js';

/** Screw lengths that are commonly to be had, mm; common practice, no source. */
export const STOCK_LENGTHS: readonly number[] = [25, 32, 35, 38, 42, 45, 50, 55, 60, 65, 70, 75, 80, 90, 100];

/** What {@link fixingLength} takes; lengths in mm. */
export interface FixingLengthRequest {
  /** Of the new boards the screw goes through. */
  readonly thicknesses: readonly number[];
  /** The old ceiling: its layers, or their thicknesses, each at its thickest. */
  readonly lining: readonly (Layer | number)[];
  /** Packing between the old ceiling and the new board. Default 0. */
  readonly packing?: number;
  readonly rules?: RulesInput;
  /** Lengths to be had. */
  readonly stock?: readonly number[];
  /**
   * How much a screw may be shorter or longer than its nominal length; `'DIN 18182-2'`: the most that its table of 1987 lets a
   * screw be, 1.5. Default 0.
   */
  readonly lengthTolerance?: number | 'DIN 18182-2';
  /** From the underside of the joist to the lowest pipe or cable known in it. */
  readonly serviceDepth?: number;
  /** Of the joists: shallow ones may have holes nearer their underside than cables keep. */
  readonly joistDepth?: number;
  /** Default `screw`. */
  readonly fixing?: 'screw' | 'nail';
  /** Of a nail. Default ringed. */
  readonly shank?: 'smooth' | 'ringed';
  /** Minutes of fire resistance that the ceiling is declared to have. */
  readonly fireRating?: number;
  /** 1 for the board next to the old ceiling, 2 for the one under it: each reaches the joist. Default 1. */
  readonly layer?: number;
  /** Of the screw, from its point. */
  readonly threadLength?: number;
  /** `false`: no probe hole shows how thick the old ceiling is, and there is only a range of lengths. Default true. */
  readonly probed?: boolean;
}

const length = z.number().check(z.gte(0), z.lte(500));

/** What is said of the screws themselves. */
const screwFields = {
  stock: z.optional(z.array(z.number().check(z.gt(0), z.lte(500))).check(z.minLength(1), z.maxLength(200))),
  lengthTolerance: z.optional(z.union([z.number().check(z.gte(0), z.lte(20)), z.literal('DIN 18182-2')])),
  threadLength: z.optional(z.number().check(z.gt(0), z.lte(500))),
};

export const screwsSchema: z.ZodMiniType<Pick<FixingLengthRequest, keyof typeof screwFields>> = z.strictObject(screwFields);

export const fixingLengthSchema: z.ZodMiniType<FixingLengthRequest> = z.strictObject({
  thicknesses: z.array(z.number().check(z.gt(0), z.lte(100))).check(z.minLength(1), z.maxLength(9)),
  lining: z.array(z.union([length, layerSchema])).check(z.maxLength(50)),
  packing: z.optional(length),
  rules: z.optional(rulesInputSchema),
  ...screwFields,
  serviceDepth: z.optional(length),
  joistDepth: z.optional(z.number().check(z.gte(20), z.lte(2000))),
  fixing: z.optional(z.enum(['screw', 'nail'])),
  shank: z.optional(z.enum(['smooth', 'ringed'])),
  fireRating: z.optional(z.number().check(z.gte(0), z.lte(600))),
  layer: z.optional(z.int().check(z.gte(1), z.lte(9))),
  probed: z.optional(z.boolean()),
});
