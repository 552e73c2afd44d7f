import { SURE } from '../../joists/bearing.js';
import { type Finding, finding } from '../../rules/finding.js';
import { isUnproven } from '../unproven.js';
import { buttJoints } from './buttJoints.js';
import { givenRule } from './givenRule.js';
import type { LaidCeiling } from './laidCeiling.js';

/** Butt joints that cannot keep the edge distances on their joist, or whose joist nobody has proved. */
export function bearingFindings({ set, parts }: LaidCeiling): Finding[] {
  const { source } = givenRule(set, 'fixing.cutEdgeDistance');
  return parts.flatMap(({ pieces, supports }) =>
    buttJoints(pieces).flatMap(([{ piece: before }, { piece }]): Finding[] => {
      const { joist: id, bearing } = piece.ends[0];
      const joist = supports.find((each) => each.joist.id === id)?.joist;
      if (bearing === undefined || joist === undefined) return [];
      const where = { pieces: [before.id, piece.id], joist: joist.id, row: piece.row };
      const measured = { where, value: bearing.offset, limit: bearing.tolerance, unit: 'mm', source };
      if (bearing.outcome === 'off') return [finding('end-off-timber', 'error', measured)];
      return [
        ...(bearing.outcome === 'short' ? [finding('bearing-short', 'warning', measured)] : []),
        ...(isUnproven(joist, bearing.withinEdgeRules)
          ? [finding('end-unproven', 'warning', { where, value: bearing.withinEdgeRules, limit: SURE })]
          : []),
      ];
    }),
  );
}
