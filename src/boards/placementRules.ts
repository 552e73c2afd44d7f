import { LEAST_TIMBER } from '../joists/bearing.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { lookUp, numberOf } from '../rules/ruleValue.js';
import { fromGrid, toGrid } from '../survey/grid.js';

/** The rules that decide where boards go, in grid steps. */
export interface PlacementRules {
  readonly stagger: number;
  readonly preferredStagger: number;
  readonly pieceLength: number;
  readonly preferredPieceLength: number;
  readonly pieceSupports: number;
  /** A joist under a piece counts when it is there for this length, or for half the width of the piece. */
  readonly supportLength: number;
  readonly pieceMass: number | null;
  /** A piece with a narrower neck snaps. */
  readonly neck: number;
  /** A wider part beyond a neck, no longer than this along the board, rests on the timber beside the opening. */
  readonly neckRest: number;
  readonly rowWidth: number;
  readonly preferredRowWidth: number;
  readonly wallGap: { readonly nominal: number; readonly least: number; readonly greatest: number };
  readonly jointGap: number;
  readonly edgeGap: number;
  /** How much a piece used uncut may fall short at a wall, and at its side of a butt joint. */
  readonly wallGive: number;
  readonly jointGive: number;
  /** How much longer than its board a piece may be, by its nominal length. */
  readonly greatestExcess: number;
  /** Timber that each side of a butt joint must have. */
  readonly leastTimber: number;
  /** What a screw keeps from the cut end and from the edge of the timber, together. */
  readonly edgeDistances: number;
  /** How accurately a cut is made. */
  readonly cutTolerance: number;
}

export function placementRules(set: RuleSet): PlacementRules {
  const grid = (key: Parameters<typeof numberOf>[1]): number => toGrid(numberOf(set, key));
  const nominal = grid('perimeter.gap');
  const range = lookUp(set, 'perimeter.gap')?.range;
  const wallGap = {
    nominal,
    least: range === undefined ? nominal : toGrid(range.least),
    greatest: range === undefined ? nominal : toGrid(range.greatest),
  };
  // Even, so that both sides of a joint get the same half.
  const jointGap = 2 * Math.round(grid('joint.gap') / 2);
  const jointGreatest = toGrid(lookUp(set, 'joint.gap')?.range?.greatest ?? fromGrid(jointGap));
  const mass = lookUp(set, 'piece.maximumMass')?.value ?? null;
  return {
    stagger: grid('stagger.minimum'),
    preferredStagger: grid('stagger.preferred'),
    pieceLength: grid('piece.minimumLength'),
    preferredPieceLength: grid('piece.preferredLength'),
    pieceSupports: numberOf(set, 'piece.minimumSupports'),
    supportLength: grid('piece.supportLength'),
    pieceMass: mass,
    neck: grid('piece.minimumNeck'),
    neckRest: grid('piece.neckRest'),
    rowWidth: grid('row.minimumWidth'),
    preferredRowWidth: grid('row.preferredWidth'),
    wallGap,
    jointGap,
    edgeGap: grid('edgeJoint.gap'),
    // A board used uncut leaves the gap at its ends wider than nominal; how much wider is the range of those two gaps. A
    // caller who fixes a gap by a plain number leaves no range, and then no piece may be longer than its board.
    wallGive: wallGap.greatest - nominal,
    jointGive: Math.floor((jointGreatest - jointGap) / 2),
    greatestExcess: Math.max(jointGreatest > jointGap ? jointGreatest : 0, wallGap.greatest - nominal),
    leastTimber: toGrid(LEAST_TIMBER),
    edgeDistances: grid('fixing.cutEdgeDistance') + grid('fixing.timberEdgeDistance'),
    cutTolerance: grid('cut.tolerance'),
  };
}
