import type { RuleSet } from '../rules/ruleSet.js';
import { SURE } from './bearing.js';
import { endJointsOf } from './endJoints.js';
import { certaintyOn, endsOutlook } from './endsOutlook.js';
import type { Inference } from './inferJoists.js';
import type { EndJoint } from './jointConfidence.js';
import { edgesAt, type Probe, probeAfter, unsureOf } from './nextProbe.js';
import { probeEnds } from './probeEnds.js';

/** Holes that are foreseen, the next one first. */
export interface ForeseenProbes {
  readonly probes: readonly Probe[];
  /** Whether they make every butt joint sure, if each meets what is believed now. */
  readonly enough: boolean;
}

/**
 * Foreseen certainty that is enough: more than sure, since edges as measured seldom fall just where they are believed. Tried on simulated
 * surveys.
 */
const FORESEEN = 0.97;
/** Nobody drills more before planning again. */
const MOST = 12;

/**
 * The holes that make every butt joint sure if each meets what is believed now: the one after it is chosen as if it had. While the places of
 * the joists are open only the next hole is foreseen, since all the others hang on what it meets.
 */
export function probesUntilSure(inference: Inference, given: readonly EndJoint[], rules: RuleSet): ForeseenProbes {
  const next = probeAfter(inference, { endJoints: given, rules });
  const unsure = unsureOf(inference, endJointsOf(inference, given), rules, SURE);
  if (next === null || next.find === 'timber') return { probes: next ? [next] : [], enough: unsure.length === 0 };
  const probes: Probe[] = [];
  let outlook = endsOutlook(inference, unsure, rules, {});
  const left = new Set(unsure.map(({ joist }) => joist.id));
  while (left.size > 0 && probes.length < MOST) {
    const edges = probeEnds(outlook, left);
    if (edges === null) break;
    probes.push(edgesAt(inference, edges));
    outlook = edges.outlook;
    for (const joist of [...left]) if (certaintyOn(outlook, joist) >= FORESEEN) left.delete(joist);
  }
  return { probes, enough: [...left].every((joist) => certaintyOn(outlook, joist) >= SURE) };
}
