import type { Finding } from '../../rules/finding.js';
import { besideOldJoint, type OldJoint } from './besideOldJoint.js';
import { givenRule } from './givenRule.js';
import { jointLines } from './jointLines.js';
import { inFrame, type LaidCeiling } from './laidCeiling.js';
import { nearestLines } from './nearestLines.js';
import { tellNear } from './tellNear.js';

/** New joints over known joints of the old ceiling, or too near them: where it could not be helped. */
export function oldJointFindings({ set, lining, parts }: LaidCeiling): Finding[] {
  if (lining.every(({ joints = [] }) => joints.length === 0)) return [];
  const rule = givenRule(set, 'oldJoint.clearance');
  return parts.flatMap((part) => {
    const lines = jointLines(part, set);
    return lining.flatMap(({ joints = [] }, layer) => {
      const old = joints.map(([a, b]): OldJoint => [inFrame(part.frame, a), inFrame(part.frame, b)]);
      return nearestLines(lines, (line) => besideOldJoint(old, line, rule.steps)).map((near) =>
        tellNear('joint-over-old-joint', part.frame, near, rule, { other: `layer ${layer + 1} of the old ceiling` }),
      );
    });
  });
}
