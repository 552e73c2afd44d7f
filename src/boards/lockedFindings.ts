import { type Finding, finding } from '../rules/finding.js';
import { lookUp, type RuleValue } from '../rules/ruleValue.js';
import type { Described } from './describeLayout.js';
import { boxOf } from './lockedPieces.js';
import type { PlacementProblem } from './placementProblem.js';

/** What is wrong with pieces that are up, and cannot be put right by laying the others in another way. */
export function lockedFindings(problem: PlacementProblem, { pieces }: Described): Finding[] {
  return (problem.request.locked ?? []).length === 0 ? [] : [...onNoJoist(problem, pieces), ...onTooFew(problem, pieces)];
}

function onNoJoist({ set }: PlacementProblem, pieces: Described['pieces']): Finding[] {
  const { source } = lookUp(set, 'fixing.cutEdgeDistance') as RuleValue;
  return pieces.flatMap((piece, i) => {
    const [low] = piece.ends;
    if (low.meets !== 'board' || low.joist !== undefined) return [];
    const where = { pieces: [pieces[i - 1].id, piece.id], row: piece.row };
    return [finding('end-off-timber', 'error', { where, source, sentence: 'locked-off-timber' })];
  });
}

function onTooFew({ set, rules, parts }: PlacementProblem, pieces: Described['pieces']): Finding[] {
  const { source } = lookUp(set, 'piece.minimumSupports') as RuleValue;
  return pieces.flatMap((piece) => {
    const part = parts.find(({ zone }) => zone === piece.zone);
    if (piece.locked !== true || part === undefined) return [];
    const box = boxOf(piece.outline, part.into);
    const middle = Math.round((box.low + box.high) / 2);
    const value = part.joists.filter(
      ({ centre }) => box.near - rules.jointGap <= centre(middle) && centre(middle) <= box.far + rules.jointGap,
    ).length;
    if (value >= rules.pieceSupports) return [];
    const where = { piece: piece.id, row: piece.row };
    return [
      finding('piece-on-one-support', 'error', {
        where,
        value,
        limit: rules.pieceSupports,
        source,
        sentence: 'locked-on-one-support',
      }),
    ];
  });
}
