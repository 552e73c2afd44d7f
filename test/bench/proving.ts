import { endJointsOf } from '../../src/joists/endJoints.js';
import { type Inference, inferJoistsIn } from '../../src/joists/inferJoists.js';
import type { EndJoint } from '../../src/joists/jointConfidence.js';
import { type Probe, unsureOf } from '../../src/joists/nextProbe.js';
import { probesUntilSure } from '../../src/joists/probesUntilSure.js';
import { ruleSets } from '../../src/rules/ruleSets.js';
import type { Mark } from '../../src/survey/mark.js';
import { normal, type Survey, seeded, surveyOf } from '../generators/surveys.js';

/** How it went to prove the joists of six butt joints as the list of probes says, planning again until nothing is left to probe. */
export interface Proved {
  readonly foreseen: number;
  /** Whether the first list was enough. */
  readonly asForeseen: boolean;
  readonly done: number;
  /** Butt joints called sure in the end, and how many of them are within the rules in truth. */
  readonly sure: number;
  readonly held: number;
}

const ROUNDS = 6;
const EDGE_SD = 3;

/** One survey's joists proved; nothing where there is nothing to prove or the list says itself that it is not enough. */
export function prove(seed: number): Proved | undefined {
  const survey = surveyOf(seed, { least: 5 });
  const draw = seeded(seed + 77);
  let inference = inferred(survey, survey.marks);
  if (inference.joists.length < 6) return undefined;
  const wanted = inference.joists.filter((_, i) => i % 4 === 2).slice(0, 3);
  const places = wanted.map(({ start }) => start.x);
  let list = probesUntilSure(inference, endsOn(inference, places), ruleSets.uk);
  if (!list.enough || list.probes.length === 0) return undefined;
  const foreseen = list.probes.length;
  let [done, asForeseen] = [0, false];
  for (let round = 0; round < ROUNDS && list.probes.length > 0; round++) {
    done += list.probes.length;
    const met = list.probes.flatMap((probe) => marksOf(survey, probe, draw));
    inference = inferred(survey, [...inference.marks, ...met]);
    list = probesUntilSure(inference, endsOn(inference, places), ruleSets.uk);
    if (round === 0) asForeseen = list.probes.length === 0;
  }
  const ends = endsOn(inference, places);
  const unsure = new Set(unsureOf(inference, endJointsOf(inference, ends), ruleSets.uk, 0.95).map(({ joist }) => joist.id));
  const sure = ends.filter(({ joist }) => !unsure.has(joist));
  const held = sure.filter(({ across, along }) => Math.abs(truthNear(survey, across, along) - across) <= limitOf(survey));
  return { foreseen, asForeseen, done, sure: sure.length, held: held.length };
}

const inferred = ({ room, width }: Survey, marks: readonly Mark[]): Inference =>
  inferJoistsIn({ room, marks, direction: 'y', width });

const depthOf = ({ room }: Survey): number => room.outline[2].y;

/** Two butt joints on the joist nearest to each place, in its middle as believed. */
function endsOn({ joists, room }: Inference, places: readonly number[]): EndJoint[] {
  const depth = room.outline[2].y;
  return places.flatMap((place) => {
    const joist = joists.reduce((one, other) => (Math.abs(other.start.x - place) < Math.abs(one.start.x - place) ? other : one));
    return [0.3, 0.7].map((share) => ({
      joist: joist.id,
      along: Math.round(depth * share),
      across: joist.start.x + (joist.end.x - joist.start.x) * share,
    }));
  });
}

/** Where the joist nearest to a place is in truth. */
function truthNear(survey: Survey, across: number, along: number): number {
  const lean = survey.slope * (along - depthOf(survey) / 2);
  return survey.centres
    .map((centre) => centre + lean)
    .reduce((one, other) => (Math.abs(other - across) < Math.abs(one - across) ? other : one));
}

/** By the edge rules of the set, or where the timber is too narrow for them by 10 mm of timber; a joint gap of 3. */
const limitOf = ({ width }: Survey): number => {
  const half = (width - 3) / 2;
  return half > 19 ? half - 19 : half - 10;
};

function marksOf(survey: Survey, { x, y, find, marks }: Probe, draw: () => number): Mark[] {
  const { width } = survey;
  const centre = truthNear(survey, x, y);
  const met = Math.abs(centre - x) <= width / 2;
  if (find === 'timber' || !met) return [met ? marks.found : marks.missed];
  return [
    { x: centre - width / 2 + EDGE_SD * normal(draw), y, kind: 'near-edge' },
    { x: centre + width / 2 + EDGE_SD * normal(draw), y, kind: 'far-edge' },
  ];
}
