import type { Finding } from '../rules/finding.js';
import type { Described } from './describeLayout.js';
import { askewFindings } from './findings/askewFindings.js';
import { bearingFindings } from './findings/bearingFindings.js';
import { centresFindings } from './findings/centresFindings.js';
import { laidCeiling } from './findings/laidCeiling.js';
import { neckFindings } from './findings/neckFindings.js';
import { oldJointFindings } from './findings/oldJointFindings.js';
import { openingJointFindings } from './findings/openingJointFindings.js';
import { overhangFindings } from './findings/overhangFindings.js';
import { rakingLightFindings } from './findings/rakingLightFindings.js';
import { sizeFindings } from './findings/sizeFindings.js';
import { staggerFindings } from './findings/staggerFindings.js';
import { supportFindings } from './findings/supportFindings.js';
import { windowRowFindings } from './findings/windowRowFindings.js';
import type { PlacementProblem } from './placementProblem.js';
import { zoneBorderFindings } from './zoneBorderFindings.js';

/** What the trade would say of a layout that breaks no rule that must hold. */
export function placementFindings(problem: PlacementProblem, layout: Described): Finding[] {
  const ceiling = laidCeiling(problem, layout);
  return [
    ...new Set(problem.located.flatMap(({ findings }) => findings)),
    ...zoneBorderFindings(problem),
    ...bearingFindings(ceiling),
    ...staggerFindings(ceiling),
    ...sizeFindings(ceiling),
    ...supportFindings(ceiling),
    ...askewFindings(ceiling),
    ...centresFindings(ceiling),
    ...overhangFindings(ceiling),
    ...openingJointFindings(ceiling),
    ...neckFindings(ceiling),
    ...oldJointFindings(ceiling),
    ...rakingLightFindings(ceiling),
    ...windowRowFindings(ceiling),
  ];
}
