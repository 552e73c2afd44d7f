import * as z from 'zod/mini';
import { demand } from '../survey/door.js';

/** Allowances, packs and coverages of a take-off. Every default is common practice, no source. */
export interface TakeOffOptions {
  /**
   * Share of screws dropped, stripped or driven twice: 0.1 is 10 %. Default 0.1, and 0.15 through lath and plaster, where
   * screws are driven again to keep off an old nail line.
   */
  readonly screwAllowance?: number;
  /** Screws in a box, the sizes to be had. Default 200, 500 and 1000. */
  readonly screwBoxes?: readonly number[];
  /** Share of joint tape lost in cutting and laps. Default 0.1. */
  readonly tapeAllowance?: number;
  /** m in a roll of joint tape. Default 90. */
  readonly tapeRoll?: number;
  /** Whether the angle of wall and ceiling is taped. Default true. */
  readonly tapeWallAngle?: boolean;
  /** m2 that one bag of finish plaster covers, waste included. Default 9. */
  readonly plasterCoverage?: number;
  /** kg in a bag of finish plaster. Default 25. */
  readonly plasterBag?: number;
  /** Boards broken on the way, a share of those laid: 0.1 is one in ten. Default 0: the cutting waste is in the layout already. */
  readonly breakage?: number;
}

const share = z.number().check(z.gte(0), z.lte(2));
const pack = z.number().check(z.gt(0), z.lte(1_000_000));

export const takeOffOptionsSchema: z.ZodMiniType<TakeOffOptions> = z.strictObject({
  screwAllowance: z.optional(share),
  screwBoxes: z.optional(
    z.array(z.int().check(z.gt(0), z.lte(1_000_000))).check(demand((boxes) => boxes.length > 0, 'too-small', 'at least one box')),
  ),
  tapeAllowance: z.optional(share),
  tapeRoll: z.optional(pack),
  tapeWallAngle: z.optional(z.boolean()),
  plasterCoverage: z.optional(pack),
  plasterBag: z.optional(pack),
  breakage: z.optional(share),
});

/** Options with every default filled in. */
export const completed = (options: TakeOffOptions, throughLath: boolean): Required<TakeOffOptions> => ({
  screwAllowance: throughLath ? 0.15 : 0.1,
  screwBoxes: [200, 500, 1000],
  tapeAllowance: 0.1,
  tapeRoll: 90,
  tapeWallAngle: true,
  plasterCoverage: 9,
  plasterBag: 25,
  breakage: 0,
  ...given(options),
});

/** Options that are there: one that is `undefined` does not hide its default. */
const given = (options: TakeOffOptions): TakeOffOptions =>
  Object.fromEntries(Object.entries(options).filter(([, value]) => value !== undefined));
