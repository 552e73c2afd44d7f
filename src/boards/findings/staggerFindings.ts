import { type Finding, finding } from '../../rules/finding.js';
import { numberOf } from '../../rules/ruleValue.js';
import { fromGrid, toGrid } from '../../survey/grid.js';
import { buttJoints } from './buttJoints.js';
import { givenRule } from './givenRule.js';
import type { LaidCeiling } from './laidCeiling.js';

/** Butt joints of neighbouring rows that are closer than preferred. Rows with something between them are no neighbours. */
export function staggerFindings({ set, parts }: LaidCeiling): Finding[] {
  const { limit, steps, source } = givenRule(set, 'stagger.preferred');
  const gap = toGrid(numberOf(set, 'edgeJoint.gap') + numberOf(set, 'cut.tolerance'));
  return parts.flatMap(({ pieces, rows }) => {
    const lowOf = new Map(rows.map(({ row, low }) => [row, low]));
    const meets = new Set(
      rows.filter(({ row, high }) => toGrid((lowOf.get(row + 1) ?? Infinity) - high) <= gap).map(({ row }) => row),
    );
    const joints = buttJoints(pieces).map(([before, { piece }]) => ({ before, piece, at: toGrid(piece.ends[0].position) }));
    return joints.flatMap((here) =>
      joints
        .filter(
          ({ piece, at }) => meets.has(here.piece.row) && piece.row === here.piece.row + 1 && Math.abs(at - here.at) < steps,
        )
        .map((above) =>
          finding('stagger', 'warning', {
            where: { pieces: [here.piece.id, above.piece.id], row: here.piece.row },
            value: fromGrid(Math.abs(above.at - here.at)),
            limit,
            unit: 'mm',
            source,
            words: { rows: `${here.piece.row} and ${above.piece.row}` },
          }),
        ),
    );
  });
}
