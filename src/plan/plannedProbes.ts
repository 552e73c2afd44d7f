import type { BoardLayout } from '../boards/boardLayout.js';
import type { EndJoint } from '../joists/jointConfidence.js';
import type { LocatedZone } from '../joists/locateZones.js';
import { probesUntilSure } from '../joists/probesUntilSure.js';
import { type Finding, finding } from '../rules/finding.js';
import type { RuleSet } from '../rules/ruleSet.js';
import type { CeilingPlan } from './ceilingPlan.js';

/** The butt joints of a layout: every one is the low end of one piece. */
export const endJointsOfLayout = ({ pieces, rows }: BoardLayout): EndJoint[] =>
  pieces.flatMap(({ row, ends: [low] }): EndJoint[] => {
    const band = rows[row - 1];
    return low.joist === undefined ? [] : [{ joist: low.joist, across: low.position, along: (band.low + band.high) / 2 }];
  });

/** What to probe before anything is cut, with what it makes of the plan. */
export interface PlannedProbes extends Pick<CeilingPlan, 'nextProbe' | 'probes'> {
  readonly findings: readonly Finding[];
}

/** The holes that would make every one of these butt joints sure; none where the joists were given, which are taken at their word. */
export function plannedProbes(
  joints: readonly EndJoint[],
  { inference }: Pick<LocatedZone, 'inference'>,
  unsure: readonly string[],
  rules: RuleSet,
): PlannedProbes {
  if (inference === undefined) return { nextProbe: null, probes: [], findings: [] };
  const { probes, enough } = probesUntilSure(inference, joints, rules);
  const [next = null] = probes;
  if (next === null) {
    return {
      nextProbe: null,
      probes,
      findings: unsure.length === 0 ? [] : [finding('probes-no-help', 'warning', { words: { list: unsure.join(', ') } })],
    };
  }
  const at = { x: next.x, y: next.y };
  if (next.find === 'timber') {
    return {
      nextProbe: next,
      probes,
      findings: [
        finding('probe-joists-first', 'warning', { where: { at }, words: { at: `${next.x}, ${next.y}`, reason: next.reason } }),
      ],
    };
  }
  const list = probes.map(({ joist, x, y }) => `${joist} (${x}, ${y})`).join('; ');
  const details = { where: { at }, value: probes.length, words: { list } };
  const sentence = enough ? (probes.length === 1 ? 'probe-makes-safe' : 'probes-make-safe') : 'probes-not-enough';
  return {
    nextProbe: next,
    probes,
    findings: [finding(enough ? 'probes-make-safe' : 'probes-not-enough', 'warning', { ...details, sentence })],
  };
}
