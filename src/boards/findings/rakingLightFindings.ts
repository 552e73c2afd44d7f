import type { Finding } from '../../rules/finding.js';
import { givenRule } from './givenRule.js';
import { inLightOf } from './inLightOf.js';
import { buttLines } from './jointLines.js';
import type { LaidCeiling } from './laidCeiling.js';
import { nearestLines } from './nearestLines.js';
import { tellNear } from './tellNear.js';
import { windowsOf } from './windowsOf.js';

/** Butt joints that the light from a window rakes along: nearer to its wall, which runs with them, than they should be. */
export function rakingLightFindings({ set, room, parts }: LaidCeiling): Finding[] {
  const windows = windowsOf(room);
  if (windows.length === 0) return [];
  const rule = givenRule(set, 'light.jointDistance');
  return parts.flatMap((part) => {
    const lines = buttLines(part);
    return windows.flatMap((wall) =>
      nearestLines(lines, (line) => inLightOf(part.walls, wall, line, rule.steps)).map((near) =>
        tellNear('raking-light', part.frame, near, rule, { wall }),
      ),
    );
  });
}
