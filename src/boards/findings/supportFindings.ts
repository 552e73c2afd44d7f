import { type Finding, finding } from '../../rules/finding.js';
import { numberOf } from '../../rules/ruleValue.js';
import { toGrid } from '../../survey/grid.js';
import { givenRule } from './givenRule.js';
import type { LaidCeiling, PieceUp, Support } from './laidCeiling.js';

/** Pieces that fill their place from wall to wall, as in a narrow bay, and have fewer joists under them than a piece should. */
export function supportFindings({ set, parts }: LaidCeiling): Finding[] {
  const { limit, source } = givenRule(set, 'piece.minimumSupports');
  const slack = toGrid(numberOf(set, 'joint.gap'));
  return parts.flatMap(({ pieces, supports }) =>
    pieces.flatMap((up): Finding[] => {
      const { id, row, ends, locked } = up.piece;
      if (locked === true || ends.some(({ meets }) => meets === 'board')) return [];
      const under = supports.filter((support) => isUnder(support, up, slack));
      if (under.length >= limit) return [];
      const where = { piece: id, row, ...(under.length === 1 && { joist: under[0].joist.id }) };
      return [
        finding('piece-on-one-support', 'warning', {
          where,
          value: under.length,
          limit,
          unit: 'joists',
          source,
          sentence: 'filling-on-one-support',
        }),
      ];
    }),
  );
}

/** Joists fan and stop short: they are looked at at both edges of the piece and in its middle. */
const isUnder = (support: Support, { near, far, low, high }: PieceUp, slack: number): boolean =>
  [low, Math.round((low + high) / 2), high].some((level) => {
    const centre = support.centre(level);
    return support.low <= level && level <= support.high && near - slack <= centre && centre <= far + slack;
  });
