import type { Attempt } from '../survey/attempt.js';
import { admit } from '../survey/door.js';
import { isInputError } from '../survey/inputError.js';
import { type Assumptions, usualAssumptions } from './assumptions.js';
import { beliefJoists } from './beliefJoists.js';
import { type CandidateGroup, candidatesOf, spacingOf } from './candidatesOf.js';
import { type Component, componentsOf } from './components.js';
import { hypothesisOf } from './hypothesisOf.js';
import type { Inference, InferRequest } from './inference.js';
import { inferenceFindings } from './inferenceFindings.js';
import { inferSchema } from './inferSchema.js';
import type { JoistsWanted } from './joistLine.js';
import { joistsOfComponents } from './joistsOfComponents.js';
import { demandMarksInRoom } from './marksInRoom.js';
import { rounded } from './rounded.js';
import { shorterWay, sightsOf } from './sightsOf.js';

export type { Hypothesis, Inference, InferRequest } from './inference.js';

/**
 * Where the joists are, inferred from whatever marks there are: old nails, a detector, a look from the loft, holes that met timber
 * and holes that met none. Each joist comes with its spread, and each way of reading the marks with its probability.
 *
 * The joists are taken to stand at one of the usual spacings, or an unusual one, or none; each strays a little on its own and a
 * little more with every bay. A mark that fits nothing is listed and moves nothing. docs/joists.md has the model.
 *
 * @param request - room, marks, width and spacings in mm; without `direction` both ways are weighed
 * @returns joists in order across the room with their spread (mm) and the probability that they are there, each as far as it runs in
 *   the room, one for each stretch (`J3a`, `J3b`) where it leaves the room and comes back; candidates, the most
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
  admit(inferSchema, request);
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

/** {@link inferJoists} without its schema. */
export function inferJoistsIn(request: InferRequest, wanted: JoistsWanted = {}): Inference {
  demandMarksInRoom(request.room, request.marks, wanted.path ?? '');
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
  const expected = leading.length === 0 ? [] : joistsOfComponents(leading, assumptions);
  const beliefs = expected.filter(({ missed }) => !missed);
  const missed = expected.filter((belief) => belief.missed);
  const direction = first?.direction ?? request.direction ?? shorterWay(room).direction;
  const believed = beliefJoists(room, direction, beliefs, request.width, wanted);
  const joists = believed.map(({ joist }) => joist);
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
  return { ...inference, findings: inferenceFindings({ ...inference, believed, missed, groups, widthKnown }) };
}

function completed({ spacings, assume }: InferRequest): Assumptions {
  const usual = spacings?.map((spacing) => ({ spacing, weight: 1 }));
  return { ...usualAssumptions, ...assume, ...(usual && { usual }) };
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
