import * as z from 'zod/mini';

/**
 * What makes one layout better than another, first thing first.
 *
 * - `boards`: fewest boards, least area bought, fewest butt joints, fewest short pieces, fewest cuts, stagger
 * - `cost`: the same, money first
 * - `joints`: the same, butt joints first
 * - `certainty`: as `boards`, but no butt joint on an unproven joist where one more board can avoid it
 * - `tradesperson`: what is easiest to build well
 * - `estimator`: whole boards at the user's prices
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
