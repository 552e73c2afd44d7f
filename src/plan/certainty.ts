import { type EndJoint, jointConfidence } from '../joists/jointConfidence.js';
import type { LocatedJoists } from '../joists/locateJoists.js';
import { certainties, proveFirst } from '../joists/proveFirst.js';
import type { Finding } from '../rules/finding.js';
import type { RuleSet } from '../rules/ruleSet.js';
import type { CeilingPlan } from './ceilingPlan.js';
import { plannedProbes } from './plannedProbes.js';

/** The fields of a plan that say how sure it is. */
type Sureness = Pick<CeilingPlan, 'confidence' | 'certainty' | 'proveFirst' | 'nextProbe' | 'probes'>;

/** How sure the butt joints are of their timber, all together and joist by joist, and what to probe before anything is cut to them. */
export function certainty(
  joints: readonly EndJoint[],
  located: LocatedJoists,
  rules: RuleSet,
): { readonly sureness: Sureness; readonly findings: readonly Finding[] } {
  const { joists, inference } = located;
  const confidence = jointConfidence(joints, joists, rules, inference);
  const { onTimber, withinEdgeRules } = confidence;
  const byJoist = certainties(confidence, joists, rules);
  const unsure = proveFirst(byJoist);
  const { findings, ...probing } = plannedProbes(joints, located, unsure, rules);
  return {
    sureness: { confidence: { onTimber, withinEdgeRules }, certainty: byJoist, proveFirst: unsure, ...probing },
    findings,
  };
}
