import * as z from 'zod/mini';
import type { RuleSet } from '../rules/ruleSet.js';
import { rulesInputSchema } from '../rules/schemas.js';
import { type RulesInput, rulesOf } from '../rules/withRules.js';
import { admit } from '../survey/door.js';
import type { Joist } from '../survey/joist.js';
import type { Mark } from '../survey/mark.js';
import type { Point } from '../survey/point.js';
import { coordinate, joistSchema, label, outlineSchema } from '../survey/schemas.js';
import { SURE } from './bearing.js';
import { type EndJoist, endJointsOf, type JoistWithEnds } from './endJoints.js';
import { endsOutlook } from './endsOutlook.js';
import { type FirstProbe, firstProbe } from './firstProbe.js';
import { frameOf } from './frame.js';
import { inferenceSchema } from './inferenceSchema.js';
import type { Inference } from './inferJoists.js';
import { jointConfidence } from './jointConfidence.js';
import { type EdgesProbe, probeEnds } from './probeEnds.js';
import { probeReason } from './probeReason.js';
import { probeSites, type Reach, type Site } from './probeSites.js';
import { probeSpacing, type SpacingProbe } from './probeSpacing.js';
import { certainties } from './proveFirst.js';

/** What {@link nextProbe} may be told. */
export interface ProbeOptions {
  /**
   * The joists that the layout uses for butt joints: ids, or ids with the place of each joint across and along the joists, plan
   * coordinates in mm. Without them what matters is where the joists stand from wall to wall.
   */
  readonly endJoints?: readonly EndJoist[];
  /** Where a hole can be put: a {@link Reach}, or only its outline, or only its step. */
  readonly reach?: Reach | readonly Point[] | number;
  /** How sure is sure enough: 0.95 for butt joints, 0.9 for the places of the joists. */
  readonly certainty?: number;
  /** A rule set, or overrides of `ruleSets.uk`; only the edge rules of butt joints are read. */
  readonly rules?: RulesInput;
}

/** The next hole to drill. */
export interface Probe {
  /** Plan coordinates, mm. */
  readonly x: number;
  readonly y: number;
  /** What the hole is expected to tell of what matters, bits: a hole that is as likely to meet timber as not tells at most 1. */
  readonly gain: number;
  /** Why here, for a person. */
  readonly reason: string;
  /** Whether it is enough to know if the hole meets timber, or both edges of the joist are to be felt for. */
  readonly find: 'timber' | 'edges';
  /** The joist to be met, where it is known which. */
  readonly joist?: string;
  /** Probability that the joists that matter are where they are believed, and what it is expected to be after the hole. */
  readonly certainty: { readonly now: number; readonly after: number };
  /** Marks to add to the others for what the hole meets. Edges are added as measured: `near-edge` and `far-edge`. */
  readonly marks: { readonly found: Mark; readonly missed: Mark };
}

/** How sure the places of the joists must be. */
const PLACED = 0.9;

const share = z.number().check(z.gte(0.5), z.lt(1));
const step = z.number().check(z.gte(1), z.lte(1000));

const optionsSchema: z.ZodMiniType<ProbeOptions> = z.strictObject({
  endJoints: z.optional(
    z
      .array(
        z.union([
          label,
          z.strictObject({ joist: label, across: z.optional(coordinate), along: z.optional(coordinate) }),
          joistSchema,
        ]),
      )
      .check(z.maxLength(5000)),
  ),
  reach: z.optional(
    z.union([
      step,
      outlineSchema,
      z.strictObject({
        step: z.optional(step),
        outline: z.optional(outlineSchema),
        along: z.optional(z.array(coordinate).check(z.minLength(1), z.maxLength(20))),
      }),
    ]),
  ),
  certainty: z.optional(share),
  rules: z.optional(rulesInputSchema),
});

/**
 * Where the next hole teaches most of what matters: where the joists stand while that is open, and then the joists of butt joints that
 * are not sure of their timber.
 *
 * While the places of the joists are open the hole is judged by what a yes or a no tells of them, and by the best hole after it. Then, where
 * the layout's butt joints are given, each place by what both edges of the joist there do for all of them together.
 *
 * @param inference - what `inferJoists` returned. To go on, call `inferJoists` again with the new marks added
 * @param options - `endJoints`: the joists of butt joints; `reach`: where a hole can be put; `certainty`: how sure is sure enough
 * @returns the hole (plan coordinates in mm), what it is expected to tell (bits) and why; `null` when another hole would not change what
 *   is done. It says where to look for timber, not what else is above the ceiling: look for cables and pipes before drilling
 * @throws InputError when a value is missing, unknown or out of range, or a joist is not of the inference
 * @example
 * ```ts
 * import { inferJoists, nextProbe, rectangle } from 'soffitwright';
 *
 * const room = { outline: rectangle(5000, 3000) };
 * const marks = [510, 1711].map((x) => ({ x, y: 1500, sd: 4 }));
 * const inference = inferJoists({ room, marks, direction: 'y', width: 45, spacings: [400, 600] });
 * const probe = nextProbe(inference);
 * console.log(probe?.find, probe?.reason);
 * // timber Tells 400 centres from 600: here one has a joist and the other has none.
 * ```
 */
export function nextProbe(inference: Inference, options: ProbeOptions = {}): Probe | null {
  admit(inferenceSchema, inference, 'inference');
  admit(optionsSchema, options, 'options');
  return probeAfter(inference, { ...options, rules: rulesOf(options.rules) });
}

/** {@link nextProbe} without its schemas. */
export function probeAfter(
  inference: Inference,
  options: Omit<ProbeOptions, 'rules'> & { readonly rules: RuleSet },
): Probe | null {
  const { endJoints, certainty, rules } = options;
  const reach = reachOf(options.reach);
  const { joists } = inference;
  if (joists.length === 0) {
    const first = firstProbe(inference, probeSites(inference, reach));
    return first && timberUnmet(inference, first);
  }
  if (endJoints === undefined) {
    const wallToWall = [...new Set([joists[0], joists[Math.floor(joists.length / 2)], joists[joists.length - 1]])];
    const placing = probeSpacing(inference, wallToWall, probeSites(inference, reach), certainty ?? PLACED);
    return placing === null || placing === 'known' ? null : timberAt(inference, placing, wallToWall);
  }
  const withEnds = endJointsOf(inference, endJoints);
  const sure = certainty ?? SURE;
  const unsure = unsureOf(inference, withEnds, rules, sure);
  if (unsure.length === 0) return null;
  const ended = withEnds.map(({ joist }) => joist);
  const placing = probeSpacing(inference, ended, probeSites(inference, reach), PLACED);
  if (placing !== null && placing !== 'known') return timberAt(inference, placing, ended);
  const edges = probeEnds(endsOutlook(inference, unsure, rules, reach), new Set(unsure.map(({ joist }) => joist.id)));
  return edges && edgesAt(inference, edges);
}

const reachOf = (reach: ProbeOptions['reach'] = {}): Reach =>
  typeof reach === 'number' ? { step: reach } : Array.isArray(reach) ? { outline: reach as readonly Point[] } : (reach as Reach);

/** The joists whose butt joints are not sure enough, with the probability that they hold. */
export function unsureOf(
  inference: Inference,
  withEnds: readonly JoistWithEnds[],
  rules: RuleSet,
  sure: number,
): (JoistWithEnds & { readonly probability: number })[] {
  const ends = withEnds.flatMap((each) => each.ends);
  const confidence = jointConfidence(ends, inference.joists, rules, inference);
  return certainties(confidence, inference.joists, rules).flatMap(({ joist: id, probability }, index) =>
    probability >= sure
      ? []
      : [{ ...withEnds[index], joist: inference.joists.find((each) => each.id === id) as Joist, probability }],
  );
}

const rounded = (value: number, perUnit: number): number => Math.round(value * perUnit) / perUnit;
const percent = (probability: number): number => Math.min(99, Math.floor(probability * 100));

function probeAt(inference: Inference, { u, v }: Site, rest: Omit<Probe, 'x' | 'y' | 'marks'>): Probe {
  const { x, y } = frameOf(inference.direction).back(u, v);
  const found: Mark = { x, y, kind: 'probe', centred: false };
  return { x, y, ...rest, marks: { found, missed: { x, y, kind: 'probe', found: false } } };
}

/** A hole that only has to tell timber from none. */
function timberAt(inference: Inference, { site, gain, now, after, apart }: SpacingProbe, joists: readonly Joist[]): Probe {
  const words = { joists: listOf(joists.map(({ id }) => id)), now: percent(now), after: percent(after) };
  const reason = apart ? probeReason('tells', { yes: apart.joist, no: apart.none }) : probeReason('places', words);
  return probeAt(inference, site, {
    gain: rounded(gain, 1000),
    reason,
    find: 'timber',
    certainty: { now: rounded(now, 1000), after: rounded(after, 1000) },
  });
}

/** Both edges of a joist that has butt joints. */
export function edgesAt(inference: Inference, { site, joist, gain, sd, sdAfter, certainty: { now, after } }: EdgesProbe): Probe {
  const words = { joist: joist.id, sd: rounded(sd, 10), sdAfter: rounded(sdAfter, 10), now: percent(now), after: percent(after) };
  return probeAt(inference, site, {
    gain: rounded(gain, 1000),
    reason: probeReason('edges', words),
    find: 'edges',
    joist: joist.id,
    certainty: { now: rounded(now, 1000), after: rounded(after, 1000) },
  });
}

const listOf = (ids: readonly string[]): string =>
  ids.length < 3 ? ids.join(' and ') : `${ids.slice(0, -1).join(', ')} and ${ids[ids.length - 1]}`;

/** The first joist is still to be met. */
const timberUnmet = (inference: Inference, { site, apart, gain }: FirstProbe): Probe =>
  probeAt(inference, site, {
    gain: rounded(gain, 1000),
    reason: probeReason('first', { width: apart }),
    find: 'timber',
    certainty: { now: 0, after: 0 },
  });
