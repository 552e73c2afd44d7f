import type { BoardLayout } from '../boards/boardLayout.js';
import { type EndJoint, jointConfidence } from '../joists/jointConfidence.js';
import type { LocatedJoists } from '../joists/locateJoists.js';
import { proveFirst } from '../joists/proveFirst.js';
import type { RuleSet } from '../rules/ruleSet.js';
import type { CeilingPlan } from './ceilingPlan.js';

/** How sure the butt joints are of their timber, all together, and which joists to prove before anything is cut to them. */
export function certainty(
  { pieces, rows }: BoardLayout,
  { joists, inference }: LocatedJoists,
  rules: RuleSet,
): Pick<CeilingPlan, 'confidence' | 'proveFirst'> {
  // Every joint is the low end of one piece.
  const joints = pieces.flatMap(({ row, ends: [low] }): EndJoint[] => {
    const band = rows[row - 1];
    return low.joist === undefined ? [] : [{ joist: low.joist, across: low.position, along: (band.low + band.high) / 2 }];
  });
  const confidence = jointConfidence(joints, joists, rules, inference);
  const { onTimber, withinEdgeRules } = confidence;
  return { confidence: { onTimber, withinEdgeRules }, proveFirst: proveFirst(confidence, joists, rules) };
}
