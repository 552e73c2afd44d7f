import * as z from 'zod/mini';
import type { Finding } from '../rules/finding.js';
import type { Attempt } from '../survey/attempt.js';
import { admit, demand } from '../survey/door.js';
import { toGrid } from '../survey/grid.js';
import { isInputError } from '../survey/inputError.js';
import type { Direction, Joist } from '../survey/joist.js';
import type { Mark } from '../survey/mark.js';
import type { Room } from '../survey/room.js';
import { markSchema, roomSchema } from '../survey/schemas.js';
import { type Assumptions, usualAssumptions } from './assumptions.js';
import { type Candidate, type CandidateGroup, candidatesOf, spacingOf } from './candidatesOf.js';
import { type Component, componentsOf } from './components.js';
import { inferenceFindings } from './inferenceFindings.js';
import { frameExtent, joistLine } from './joistLine.js';
import { type JoistBelief, joistsOfComponents } from './joistsOfComponents.js';
import { demandMarksInRoom } from './marksInRoom.js';
import { type Sight, sightAlong } from './readings.js';

/** What {@link inferJoists} takes. */
export interface InferRequest {
  readonly room: Room;
  /** Any marks, in any order; up to 50 mm outside the outline. */
  readonly marks: readonly Mark[];
  /** The axis that the joists run along; both are weighed when not given. */
  readonly direction?: Direction;
  /** Spacings the joists may have been set out to, mm; the usual ones when not given. */
  readonly spacings?: readonly number[];
  /** Width of the joists, mm; 47 is assumed, and said, when nobody measured it. */
  readonly width?: number;
  /** Replaces numbers of the statistical model. */
  readonly assume?: Partial<Assumptions>;
}

/** One reading of the marks, in full: enough to continue from. */
export interface Hypothesis {
  readonly probability: number;
  readonly direction: Direction;
  readonly family: 'usual' | 'other' | 'irregular';
  /** Nominal spacing of the family, mm. */
  readonly spacing: number;
  /** Standard deviations: of each joist on its own and of what each bay adds, mm; of the slopes, mm in a metre. */
  readonly straying: number;
  readonly drift: number;
  readonly skew: number;
  readonly fan: number;
  /** For each mark the number of its joist and how many widths it is off the middle; `null`: on none, or a miss. */
  readonly places: readonly ({ readonly joist: number; readonly off: number } | null)[];
  readonly doubled: readonly number[];
}

/** What the marks say of the joists. */
export interface Inference {
  readonly room: Room;
  readonly marks: readonly Mark[];
  readonly direction: Direction;
  /** In order across the room. */
  readonly joists: readonly Joist[];
  /** Mean centre to centre of the first candidate and its standard deviation, mm; `null` when the joists follow no spacing. */
  readonly spacing: { readonly value: number; readonly sd: number } | null;
  /** The most probable first. */
  readonly candidates: readonly Candidate[];
  /** Indices of the marks that are taken to be of something else; they move nothing. */
  readonly outliers: readonly number[];
  /** Probability of the first candidate. */
  readonly confidence: number;
  readonly hypotheses: readonly Hypothesis[];
  readonly findings: readonly Finding[];
  /** The numbers of the model that were used, and the width. */
  readonly assumptions: Assumptions;
  readonly width: { readonly value: number; readonly sd: number };
}

const positiveNumber = z.number().check(z.gt(0), z.lte(10_000));
const zeroUp = z.number().check(z.gte(0), z.lte(10_000));
const share = z.number().check(z.gte(0), z.lt(1));
const deviations = z.array(zeroUp).check(z.minLength(1), z.maxLength(12));

/** The schema of {@link Assumptions}, every part of which may be left out. */
export const assumeSchema: z.ZodMiniType<Partial<Assumptions>> = z.strictObject({
  spread: z.optional(
    z.strictObject({
      probe: positiveNumber,
      'near-edge': positiveNumber,
      'far-edge': positiveNumber,
      fixing: positiveNumber,
      detector: positiveNumber,
      loft: positiveNumber,
    }),
  ),
  usual: z.optional(
    z
      .array(z.strictObject({ spacing: z.number().check(z.gte(150), z.lte(1300)), weight: positiveNumber }))
      .check(z.minLength(1), z.maxLength(30)),
  ),
  otherSpacing: z.optional(share),
  irregular: z.optional(share),
  spacingSd: z.optional(zeroUp),
  straying: z.optional(deviations),
  drift: z.optional(deviations),
  irregularDrift: z.optional(deviations),
  skew: z.optional(zeroUp),
  skewAskew: z.optional(zeroUp),
  fan: z.optional(zeroUp),
  askew: z.optional(share),
  fanned: z.optional(share),
  ownSkew: z.optional(zeroUp),
  spurious: z.optional(share),
  repeated: z.optional(share),
  missing: z.optional(share),
  doubled: z.optional(share),
  width: z.optional(positiveNumber),
  widthSd: z.optional(zeroUp),
  givenWidthSd: z.optional(zeroUp),
  ownWidthSd: z.optional(zeroUp),
  falseMiss: z.optional(share),
  falseHit: z.optional(share),
  wander: z.optional(positiveNumber),
  shorterWay: z.optional(share),
});

const requestSchema: z.ZodMiniType<InferRequest> = z.strictObject({
  room: roomSchema,
  marks: z.array(markSchema).check(z.minLength(1), z.maxLength(1000)),
  direction: z.optional(z.enum(['x', 'y'])),
  spacings: z.optional(
    z.array(z.number().check(z.gte(150), z.lte(1300))).check(
      z.minLength(1),
      z.maxLength(30),
      demand((spacings) => new Set(spacings).size === spacings.length, 'repeated-spacing', 'each spacing once'),
    ),
  ),
  width: z.optional(z.number().check(z.gte(10), z.lte(1000))),
  assume: z.optional(assumeSchema),
});

/**
 * Where the joists are, inferred from whatever marks there are: old nails, a detector, a look from the loft, holes that met timber
 * and holes that met none. Each joist comes with its spread, and each way of reading the marks with its probability.
 *
 * The joists are taken to stand at one of the usual spacings, or an unusual one, or none; each strays a little on its own and a
 * little more with every bay. A mark that fits nothing is listed and moves nothing. docs/joists.md has the model.
 *
 * @param request - room, marks, width and spacings in mm; without `direction` both ways are weighed
 * @returns joists in order across the room with their spread (mm) and the probability that they are there; candidates, the most
 *   probable first; findings to read before anything is cut. It is an inference, never a clearance to cut
 * @throws InputError when a value is missing, unknown or out of range, or a mark is more than 50 mm outside the room
 * @example
 * ```ts
 * import { inferJoists, rectangle } from 'soffitwright';
 *
 * const room = { outline: rectangle(4200, 3000) };
 * const marks = [130, 531, 1329, 1730, 2931].map((x) => ({ x, y: 1500, kind: 'probe' as const }));
 * const { spacing, candidates, joists } = inferJoists({ room, marks, direction: 'y', width: 47 });
 * console.log(candidates[0].spacing, spacing?.value, joists.length);
 * // 400 400.03 11
 * ```
 */
export function inferJoists(request: InferRequest): Inference {
  admit(requestSchema, request);
  return inferJoistsIn(request);
}

/**
 * {@link inferJoists}, but the problems of the input are returned and not thrown.
 *
 * @param request - as for `inferJoists`, lengths in mm
 * @returns `{ ok: true, value }`, or `{ ok: false, reason: 'input', problems }`
 * @example
 * ```ts
 * import { rectangle, tryInferJoists } from 'soffitwright';
 *
 * const attempt = tryInferJoists({ room: { outline: rectangle(4200, 3000) }, marks: [{ x: 9000, y: 1500 }] });
 * console.log(attempt.ok ? 'inferred' : attempt.reason);
 * // input
 * ```
 */
export function tryInferJoists(request: InferRequest): Attempt<Inference> {
  try {
    return { ok: true, value: inferJoists(request) };
  } catch (error) {
    if (isInputError(error)) return { ok: false, reason: 'input', problems: error.problems };
    throw error;
  }
}

/** {@link inferJoists} without its schema: `path` is where the marks stand in the caller's input. */
export function inferJoistsIn(request: InferRequest, path = ''): Inference {
  demandMarksInRoom(request.room, request.marks, path);
  const { room, marks } = request;
  const assumptions = completed(request);
  const width = {
    value: request.width ?? assumptions.width,
    sd: request.width === undefined ? assumptions.widthSd : assumptions.givenWidthSd,
  };
  const components = componentsOf(sightsOf(request, width.value, assumptions), width.value, width.sd, assumptions);
  const groups = candidatesOf(components);
  const [first] = groups;
  // The leader is the best component of the first candidate.
  const leading = first === undefined ? [] : [first.components[0], ...components.filter((each) => each !== first.components[0])];
  const beliefs = leading.length === 0 ? [] : joistsOfComponents(leading, assumptions);
  const direction = first?.direction ?? request.direction ?? shorterWay(room).direction;
  const joists = joistsFrom(room, direction, beliefs, request.width);
  const outliers = leading.length === 0 ? [] : outliersOf(leading[0]);
  const candidates = groups
    .map(({ spacing, direction: way, probability }) => ({ spacing, direction: way, probability: rounded(probability, 1e4) }))
    .filter(({ probability }, index) => index === 0 || probability > 0);
  const inference = {
    room,
    marks,
    direction,
    joists,
    spacing: spacingOver(first),
    candidates,
    outliers,
    confidence: candidates[0]?.probability ?? 0,
    hypotheses: components.map((component) => hypothesisOf(component, marks.length)),
    assumptions,
    width,
  };
  const widthKnown = request.width !== undefined || edgesOfOneJoist(leading);
  return { ...inference, findings: inferenceFindings({ ...inference, beliefs, groups, widthKnown }) };
}

function completed({ spacings, assume }: InferRequest): Assumptions {
  const usual = spacings?.map((spacing) => ({ spacing, weight: 1 }));
  return { ...usualAssumptions, ...assume, ...(usual && { usual }) };
}

function sightsOf(request: InferRequest, width: number, assumptions: Assumptions): { sight: Sight; prior: number }[] {
  const { room, marks } = request;
  const sight = (direction: Direction): Sight => sightAlong(direction, room, marks, width, assumptions);
  if (request.direction !== undefined) return [{ sight: sight(request.direction), prior: 1 }];
  const { direction, ratio } = shorterWay(room);
  // A square room says nothing; from a fifth longer one way, joists usually span the shorter.
  const lean = Math.min(1, (ratio - 1) / 0.2);
  const shorter = 0.5 + (assumptions.shorterWay - 0.5) * lean;
  return [
    { sight: sight(direction), prior: shorter },
    { sight: sight(direction === 'x' ? 'y' : 'x'), prior: 1 - shorter },
  ];
}

function shorterWay(room: Room): { direction: Direction; ratio: number } {
  const { near, far, low, high } = frameExtent(room, 'y');
  const [width, depth] = [far - near, high - low];
  return width < depth ? { direction: 'x', ratio: depth / width } : { direction: 'y', ratio: width / depth };
}

const rounded = (value: number, perUnit: number): number => Math.round(value * perUnit) / perUnit;

function joistsFrom(room: Room, direction: Direction, beliefs: readonly JoistBelief[], width: number | undefined): Joist[] {
  const near = frameExtent(room, direction).near;
  const offset = near / toGrid(1);
  const joists: Joist[] = [];
  for (const belief of beliefs) {
    const facts = {
      id: `J${joists.length + 1}`,
      width: belief.doubled || width === undefined ? rounded(belief.width, 2) : width,
      sd: rounded(belief.sd, 100),
      sdAtStart: rounded(belief.sdAtStart, 100),
      sdAtEnd: rounded(belief.sdAtEnd, 100),
      presence: Math.min(1, rounded(belief.presence, 1e4)),
      known: belief.measured ? ('measured' as const) : ('inferred' as const),
    };
    const joist = joistLine(room, direction, rounded(offset + belief.atStart, 10), rounded(offset + belief.atEnd, 10), facts);
    if (joist) joists.push(joist);
  }
  return joists;
}

/** Whether both edges of some joist were marked. */
function edgesOfOneJoist([leader]: readonly Component[]): boolean {
  if (leader === undefined) return false;
  const { sight, placing } = leader.weighed;
  const joistsWith = (edge: number): Set<number | undefined> =>
    new Set(sight.readings.map((reading, i) => (reading.edge === edge ? placing.places[i]?.joist : undefined)));
  const far = joistsWith(1);
  return [...joistsWith(-1)].some((joist) => joist !== undefined && far.has(joist));
}

function outliersOf({ weighed }: Component): number[] {
  return weighed.sight.readings
    .filter((_, index) => weighed.placing.places[index] === null)
    .map(({ mark }) => mark)
    .sort((a, b) => a - b);
}

function spacingOver(group: CandidateGroup | undefined): Inference['spacing'] {
  if (group === undefined || group.spacing === 'irregular') return null;
  let [weight, mean, square] = [0, 0, 0];
  for (const component of group.components) {
    const each = spacingOf(component);
    weight += component.probability;
    mean += component.probability * each.mean;
    square += component.probability * (each.variance + each.mean * each.mean);
  }
  mean /= weight;
  return { value: rounded(mean, 100), sd: rounded(Math.sqrt(Math.max(0, square / weight - mean * mean)), 100) };
}

function hypothesisOf({ weighed, probability }: Component, marks: number): Hypothesis {
  const { placing, fit, sight } = weighed;
  const places: Hypothesis['places'][number][] = new Array(marks).fill(null);
  sight.readings.forEach((reading, index) => {
    places[reading.mark] = placing.places[index];
  });
  return {
    probability: rounded(probability, 1e6),
    direction: sight.direction,
    family: placing.family.kind,
    spacing: placing.family.spacing,
    ...fit.setting,
    places,
    doubled: placing.doubled,
  };
}
