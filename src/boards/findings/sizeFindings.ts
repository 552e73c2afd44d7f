import { type Finding, finding } from '../../rules/finding.js';
import { lookUp } from '../../rules/ruleValue.js';
import { givenRule } from './givenRule.js';
import type { LaidCeiling } from './laidCeiling.js';

/** Pieces and rows smaller than preferred, and pieces too heavy. */
export function sizeFindings({ set, parts }: LaidCeiling): Finding[] {
  const [shortest, narrowest] = [givenRule(set, 'piece.preferredLength'), givenRule(set, 'row.preferredWidth')];
  const heaviest = lookUp(set, 'piece.maximumMass');
  return parts.flatMap(({ pieces, rows }) => [
    ...pieces
      .filter(({ piece: { length } }) => length < shortest.limit)
      .map(({ piece: { id, length, row } }) =>
        finding('piece-below-preferred', 'warning', {
          where: { piece: id, row },
          value: length,
          limit: shortest.limit,
          unit: 'mm',
          source: shortest.source,
        }),
      ),
    ...rows
      .filter(({ width }) => width < narrowest.limit)
      .map(({ row, width }) =>
        finding('row-below-preferred', 'warning', {
          where: { row },
          value: width,
          limit: narrowest.limit,
          unit: 'mm',
          source: narrowest.source,
        }),
      ),
    ...pieces
      .filter(({ piece }) => piece.massKg > (heaviest?.value ?? Infinity))
      .map(({ piece: { id, massKg } }) =>
        finding('piece-too-heavy', 'warning', {
          where: { piece: id },
          value: massKg,
          limit: heaviest?.value as number,
          unit: 'kg',
          ...(heaviest && { source: heaviest.source }),
        }),
      ),
  ]);
}
