import type { Finding } from '../../rules/finding.js';
import { besideHatchCorner } from './besideHatchCorner.js';
import { distanceToOpening } from './distanceToOpening.js';
import { givenRule } from './givenRule.js';
import { jointLines } from './jointLines.js';
import type { LaidCeiling } from './laidCeiling.js';
import { nearestLines } from './nearestLines.js';
import { tellNear } from './tellNear.js';

/** Joints too near a light or another opening, and joints in line with a corner of a hatch, from which they would crack. */
export function openingJointFindings({ set, room, parts }: LaidCeiling): Finding[] {
  const openings = room.openings ?? [];
  if (openings.length === 0) return [];
  const beside = givenRule(set, 'opening.jointClearance');
  const inLine = givenRule(set, 'hatch.cornerClearance');
  return parts.flatMap((part) => {
    const { frame } = part;
    const lines = jointLines(part, set);
    return openings.flatMap((opening, index) => {
      const to = { other: `${opening.kind} ${opening.id ?? index + 1}` };
      if (opening.kind === 'hatch') {
        return nearestLines(lines, (line) => besideHatchCorner(frame, opening, line, inLine.steps)).map((near) =>
          tellNear('joint-near-hatch-corner', frame, near, inLine, to),
        );
      }
      return nearestLines(lines, (line) => distanceToOpening(frame, opening, line))
        .filter(({ away }) => away < beside.steps)
        .map((near) => tellNear('joint-near-opening', frame, near, beside, to));
    });
  });
}
