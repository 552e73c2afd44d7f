import { centreAt } from '../joists/frame.js';
import { type Finding, finding } from '../rules/finding.js';
import { lookUp, type RuleValue } from '../rules/ruleValue.js';
import type { Described } from './describeLayout.js';
import { stretchOf } from './lockedPieces.js';
import type { PlacementProblem } from './placementProblem.js';

/** What is wrong with pieces that are up, and cannot be put right by laying the others in another way. */
export function lockedFindings(problem: PlacementProblem, { pieces }: Described): Finding[] {
  return problem.standing.up.length === 0 ? [] : [...onNoJoist(problem, pieces), ...onTooFew(problem, pieces)];
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

function onTooFew({ set, rules, joists, frame }: PlacementProblem, pieces: Described['pieces']): Finding[] {
  const { source } = lookUp(set, 'piece.minimumSupports') as RuleValue;
  return pieces.flatMap((piece) => {
    const box = stretchOf(piece.outline, frame.into);
    const middle = Math.round((box.low + box.high) / 2);
    const value = joists.filter(({ joist }) => {
      const centre = centreAt(joist, frame, middle);
      return box.near - rules.jointGap <= centre && centre <= box.far + rules.jointGap;
    }).length;
    if (piece.locked !== true || value >= rules.pieceSupports) return [];
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
