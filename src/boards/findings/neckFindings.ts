import { type Finding, finding } from '../../rules/finding.js';
import { fromGrid } from '../../survey/grid.js';
import { necksOf } from '../necksOf.js';
import { distanceToOpening } from './distanceToOpening.js';
import { givenRule } from './givenRule.js';
import type { LaidCeiling } from './laidCeiling.js';

/** Pieces notched so far that the rest snaps when they are lifted. Holes for lights are cut when the board is up. */
export function neckFindings({ set, room, parts }: LaidCeiling): Finding[] {
  const { limit, steps, source } = givenRule(set, 'piece.minimumNeck');
  const rest = givenRule(set, 'piece.neckRest').steps;
  const lights = (room.openings ?? []).filter(({ kind }) => kind === 'light');
  return parts.flatMap(({ frame, pieces }) =>
    pieces.flatMap(({ piece, outline, holes }): Finding[] => {
      if (outline.length <= 4 && holes.length === 0) return [];
      const early = holes.filter((hole) =>
        lights.every((light) => distanceToOpening(frame, light, { from: hole[0], to: hole[1] }).away > 0),
      );
      const necks = necksOf(outline, early, { under: steps, rest });
      if (necks.length === 0) return [];
      return [
        finding('piece-neck-narrow', 'warning', {
          where: { piece: piece.id, row: piece.row },
          value: fromGrid(Math.min(...necks.map(({ width }) => width))),
          limit,
          unit: 'mm',
          source,
        }),
      ];
    }),
  );
}
