import type { BoardLayout } from '../boards/boardLayout.js';
import { layClear } from '../boards/layClear.js';
import type { LocatedZone } from '../joists/locateZones.js';
import { type Finding, finding } from '../rules/finding.js';
import type { CompletedJob } from './ceilingPlan.js';
import { fixCeiling } from './fixCeiling.js';
import type { CompletedLayer, PlannedLayer } from './layers.js';

/** The second layer over the first, with what is to be said of it. */
export function secondLayer(
  job: CompletedJob,
  { boards, rowWidths }: CompletedLayer,
  below: BoardLayout,
  parts: readonly LocatedZone[],
): { readonly planned: PlannedLayer; readonly findings: readonly Finding[] } {
  const { room, joists, lining: old, rules, prefer } = job;
  const request = { room, joists, boards, rules, lining: old, prefer, ...(rowWidths && { rowWidths }) };
  const directionIn = (zone: string | undefined) => (parts.find((part) => part.zone === zone) ?? parts[0]).direction;
  const { layout, lining, apart } = layClear(request, below, directionIn);
  const { findings, ...fixed } = fixCeiling({ ...job, lining, boards }, layout, parts, rules);
  return {
    planned: { layer: 2, boards, layout, ...fixed, apart },
    findings: [...layout.findings, ...findings].map(ofSecond),
  };
}

/** Rows and pieces of a finding are those of the second layer. */
const ofSecond = (each: Finding): Finding =>
  each.where === undefined || Object.keys(each.where).every((key) => key === 'joist' || key === 'at')
    ? each
    : { ...each, message: `Second layer: ${each.message}`, where: { ...each.where, layer: 2 } };

/** Two layers on bars that hang free of the joists are no job for the rules of one. */
export const layersOnBars = ({ lining }: CompletedJob): Finding[] =>
  lining.some(({ kind }) => kind === 'metal-bar') ? [finding('layers-on-bars', 'hold')] : [];
