import { type EndJoint, jointConfidence } from '../joists/jointConfidence.js';
import type { LocatedZone } from '../joists/locateZones.js';
import { certainties, proveFirst } from '../joists/proveFirst.js';
import type { Finding } from '../rules/finding.js';
import type { RuleSet } from '../rules/ruleSet.js';
import type { CeilingPlan } from './ceilingPlan.js';
import { plannedProbes } from './plannedProbes.js';
import { joistsOf } from './settleJoists.js';

/** The fields of a plan that say how sure it is. */
type Sureness = Pick<CeilingPlan, 'confidence' | 'certainty' | 'proveFirst' | 'nextProbe' | 'probes'>;

/**
 * How sure the butt joints are of their timber, all together and joist by joist, and what to probe before anything is cut to them.
 * Zones whose joists were inferred from marks of their own are taken to be as they are whatever the others are.
 */
export function certainty(
  joints: readonly EndJoint[],
  parts: readonly LocatedZone[],
  rules: RuleSet,
): { readonly sureness: Sureness; readonly findings: readonly Finding[] } {
  const groups = [...new Set(parts.map(({ inference }) => inference))].map((inference) => {
    const joists = joistsOf(parts.filter((part) => part.inference === inference));
    const its = new Set(joists.map(({ id }) => id));
    return certaintyOf(
      joints.filter(({ joist }) => its.has(joist)),
      { joists, ...(inference && { inference }) },
      rules,
    );
  });
  const probability = (of: keyof Sureness['confidence']): number =>
    groups.reduce((all, { sureness }) => all * sureness.confidence[of], 1);
  const all = groups.map(({ sureness }) => sureness);
  return {
    sureness: {
      confidence: { onTimber: probability('onTimber'), withinEdgeRules: probability('withinEdgeRules') },
      certainty: all.flatMap((each) => each.certainty),
      proveFirst: all.flatMap((each) => each.proveFirst),
      nextProbe: all.find((each) => each.nextProbe !== null)?.nextProbe ?? null,
      probes: all.flatMap((each) => each.probes),
    },
    findings: groups.flatMap((each) => each.findings),
  };
}

/** The joists of one inference, or all that were not inferred. */
function certaintyOf(
  joints: readonly EndJoint[],
  located: Pick<LocatedZone, 'joists' | 'inference'>,
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
