import type { PlacementProblem } from './placementProblem.js';
import { fitsLength, type PossiblePiece } from './possiblePieces.js';

/**
 * Whether a piece is more than the team can lift. Which board it will be cut from is not known while layouts are compared: the
 * heaviest that can give it counts. Its weight is that of the rectangle it is cut from.
 */
export function isHeavy(
  { rules, stocks }: Pick<PlacementProblem, 'rules' | 'stocks'>,
  piece: PossiblePiece,
  width: number,
): boolean {
  if (rules.pieceMass === null) return false;
  const able = stocks.filter((stock) => stock.width >= width && fitsLength({ rules }, stock.length, piece));
  const heaviest = Math.max(0, ...able.map(({ board }) => board.massPerArea));
  return (piece.cut / 1e6) * (width / 1e6) * heaviest > rules.pieceMass;
}
