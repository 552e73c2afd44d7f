import * as z from 'zod/mini';
import type { CheckRecord, CheckStep } from '../rules/checkRecord.js';
import { type Finding, finding } from '../rules/finding.js';
import type { Source } from '../rules/source.js';
import { smoothNailsBarred } from '../rules/standards/en1995of2008.js';
import { admit, demand } from '../survey/door.js';
import { problem, refuse } from '../survey/inputError.js';
import type { CapacityFixing, CapacityMethod, CapacityTimber } from './capacityFixing.js';
import { hungLoad, newtons } from './hungLoad.js';
import { type Hold, holdOf } from './withdrawal.js';

/** What {@link fixingCapacity} takes. */
export interface FixingCapacityRequest {
  readonly fixing: CapacityFixing;
  readonly timber: CapacityTimber;
  /** Of the new boards, kg/m2. */
  readonly hungMassPerArea: number;
  /** Of the old ceiling, kg/m2, if it may let go and hang on the new one. Default 0. */
  readonly oldCeilingMassPerArea?: number;
  /** Joist centres, mm. */
  readonly joistSpacing: number;
  /** Along a joist, mm. */
  readonly fixingSpacing: number;
  /** Bays that a board runs over. Default 2, which loads its middle joist most. */
  readonly spans?: number;
  /**
   * `ec5`: EN 1995-1-1, characteristic values with partial factors; `nds`: allowable values; `wood-handbook`: mean test values
   * over a divisor of 5. Default `ec5`.
   */
  readonly method?: CapacityMethod;
}

/** A {@link CheckRecord} of one fixing; where its method has no rule for it, `fallback` is a labelled substitute. */
export interface FixingCapacity extends CheckRecord {
  readonly fallback?: CapacityFallback;
}

/** What to reckon with where the standard does not cover the fixing; always labelled as such in the record. */
export interface CapacityFallback {
  /** What it is, and that it is no rule for this fixing. */
  readonly label: string;
  readonly capacity: number;
  readonly ratio: number | null;
  readonly ok: boolean;
  readonly steps: readonly CheckStep[];
  readonly source: Source;
}

const size = z.number().check(z.gt(0), z.lte(500));
const mass = z.number().check(z.gte(0), z.lte(500));
const force = z.number().check(z.gt(0), z.lte(100_000));
const density = z.number().check(z.gte(200), z.lte(1200));

const requestSchema: z.ZodMiniType<FixingCapacityRequest> = z.strictObject({
  fixing: z.strictObject({
    kind: z.optional(z.enum(['screw', 'nail'])),
    diameter: z.number().check(z.gte(1), z.lte(20)),
    innerDiameter: z.optional(z.number().check(z.gte(0.5), z.lte(20))),
    shank: z.optional(z.enum(['smooth', 'ringed'])),
    embedment: z.number().check(z.gte(0), z.lte(500)),
    threadLength: z.optional(size),
    withdrawal: z.optional(z.strictObject({ strength: z.number().check(z.gt(0), z.lte(100)), density })),
    headPullThrough: z.optional(z.union([force, z.literal('ASTM C36')])),
    tension: z.optional(force),
  }),
  timber: z
    .strictObject({
      grade: z.optional(z.enum(['C14', 'C16', 'C18', 'C20', 'C22', 'C24', 'C27', 'C30'])),
      density: z.optional(density),
      specificGravity: z.optional(z.number().check(z.gte(0.2), z.lte(1.2))),
      serviceClass: z.optional(z.literal([1, 2, 3])),
      willDry: z.optional(z.boolean()),
    })
    .check(
      demand(
        ({ grade, density, specificGravity }) => grade !== undefined || density !== undefined || specificGravity !== undefined,
        'missing',
        'a grade, a density or a specific gravity',
      ),
    ),
  hungMassPerArea: mass,
  oldCeilingMassPerArea: z.optional(mass),
  joistSpacing: z.number().check(z.gt(0), z.lte(5000)),
  fixingSpacing: z.number().check(z.gt(0), z.lte(5000)),
  spans: z.optional(z.int().check(z.gte(1), z.lte(50))),
  method: z.optional(z.enum(['ec5', 'nds', 'wood-handbook'])),
});

/**
 * Whether a fixing holds what hangs on it for good: the new boards, and the old ceiling if that may let go.
 *
 * Withdrawal by EN 1995-1-1 (screws of 6 to 12 mm; thinner ones only by the strength their maker declares), by the NDS or by the
 * Wood Handbook. Without a rule for the fixing the capacity is 0, and `fallback` offers a smooth nail's hold of the same
 * diameter, labelled as what it is. Smooth nails carry no permanent load under any method. The pull of the head through the
 * board is checked only where it was declared or tested.
 *
 * @param request - sizes in mm, masses in kg/m2, loads in N, densities in kg/m3
 * @returns demand and capacity in N with every step; a fixing that fails is a result
 * @throws InputError when a value is missing, unknown or out of range, or the method needs a density that was not given
 * @example
 * ```ts
 * import { fixingCapacity } from 'soffitwright';
 *
 * const { demand, capacity, ok, fallback } = fixingCapacity({
 *   fixing: { diameter: 3.5, embedment: 25 },
 *   timber: { grade: 'C16' },
 *   hungMassPerArea: 15,
 *   joistSpacing: 400,
 *   fixingSpacing: 230,
 * });
 * console.log(demand, capacity, ok, fallback?.capacity, fallback?.ok);
 * // 22.8 0 false 77.6 true
 * ```
 */
export function fixingCapacity(request: FixingCapacityRequest): FixingCapacity {
  admit(requestSchema, request);
  const { method = 'ec5', timber } = request;
  const missing =
    method === 'ec5'
      ? timber.grade === undefined && timber.density === undefined && 'density'
      : timber.specificGravity === undefined && 'specificGravity';
  if (missing) refuse(problem('missing', `timber.${missing}`, `a number, which ${method} needs`, 'nothing'));
  return capacityOf(request);
}

/** {@link fixingCapacity} without its door. */
export function capacityOf(request: FixingCapacityRequest): FixingCapacity {
  const { fixing, timber, oldCeilingMassPerArea = 0, spans = 2, method = 'ec5' } = request;
  const load = hungLoad({ ...request, oldCeilingMassPerArea, spans, factored: method === 'ec5' });
  const asked = load[load.length - 1].value;
  const { steps, capacity, source, fallback } = holdOf(fixing, timber, method);
  const smooth = fixing.kind === 'nail' && (fixing.shank ?? 'smooth') === 'smooth';
  const held = smooth ? 0 : capacity;
  return {
    demand: asked,
    capacity: held,
    unit: 'N',
    ...judged(asked, held),
    steps: [...load, ...steps],
    source: smooth ? smoothNailsBarred.source : source,
    findings: capacityFindings(request, smooth, capacity),
    ...(fallback && !smooth && { fallback: asFallback(fallback, asked) }),
  };
}

const judged = (asked: number, held: number): { readonly ratio: number | null; readonly ok: boolean } => ({
  ratio: held > 0 ? Math.round((asked / held) * 1000) / 1000 : null,
  ok: held > 0 && asked <= held,
});

const FALLBACK =
  'Conservative fallback, no rule for this fixing: the hold of a smooth nail of its diameter, whose thread holds more.';

function asFallback({ steps, capacity, source }: Hold, asked: number): CapacityFallback {
  const held = newtons(capacity);
  return { label: FALLBACK, capacity: held, ...judged(asked, held), steps, source };
}

function capacityFindings({ fixing, method = 'ec5' }: FixingCapacityRequest, smooth: boolean, capacity: number): Finding[] {
  const { diameter, embedment, headPullThrough } = fixing;
  if (smooth) return [finding('nail-smooth-permanent', 'error', { source: smoothNailsBarred.source })];
  return [
    ...(capacity === 0
      ? [finding('capacity-unruled', 'warning', { value: diameter, unit: 'mm', words: { method: METHODS[method], embedment } })]
      : []),
    ...(headPullThrough === undefined ? [finding('head-pull-through-unknown', 'warning')] : []),
  ];
}

const METHODS = { ec5: 'EN 1995-1-1', nds: 'The NDS', 'wood-handbook': 'The Wood Handbook' } as const;
