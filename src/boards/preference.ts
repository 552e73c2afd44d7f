import * as z from 'zod/mini';

/**
 * What makes one layout better than another, first thing first.
 *
 * - `boards`: fewest boards, least area bought, fewest long joints in line with inner corners, fewest butt joints, fewest of them with
 *   poor bearing, joints clear of old ones, fewest short pieces, joints out of the light and off openings, butt joints on doubled
 *   joists; and between layouts that are alike in all this, fewest cuts, stagger, fewest ripped rows
 * - `cost`: the same, money first
 * - `joints`: the same, butt joints first
 * - `certainty`: as `boards`, but butt joints on unproven joists before all butt joints, and none at all where one more board can
 *   avoid it
 * - `tradesperson`: what is easiest to build well: pieces that can be lifted, no unproven ends, good bearing, no narrow rows, joints off
 *   inner corners, then the least of twice the boards and the butt joints together; few lengths before few cuts
 * - `estimator`: as `cost`, with few sizes of board before few butt joints where layouts are compared
 */
export type Preference = 'boards' | 'cost' | 'joints' | 'certainty' | 'tradesperson' | 'estimator';

export const preferenceSchema: z.ZodMiniType<Preference> = z.enum([
  'boards',
  'cost',
  'joints',
  'certainty',
  'tradesperson',
  'estimator',
]);
