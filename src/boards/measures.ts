import { bearingOf } from '../joists/bearing.js';
import { cutsOf } from './cutsOfBoard.js';
import type { Division, Laid, Measures } from './laid.js';
import type { PlacementProblem } from './placementProblem.js';
import type { Preference } from './preference.js';
import { isUnproven } from './unproven.js';

export function measure(problem: PlacementProblem, laid: Omit<Laid, 'measures' | 'first'>): Measures {
  const { rules } = problem;
  const { rows, divisions, wanted, boards } = laid;
  const joints = divisions.flatMap((division) => division.joists.map((index) => problem.joists[index].joist));
  const bearings = joints.map((joist) => ({ joist, bearing: bearingOf(joist, 0, rules.jointGap / 1000, problem.set) }));
  const density = problem.stocks[0].board.massPerArea;
  return {
    boards: boards.length,
    cost: boards.reduce((sum, { stock }) => sum + Math.round((stock.board.price ?? 0) * 1000), 0),
    area: boards.reduce((sum, { stock }) => sum + stock.area, 0),
    joints: joints.length,
    shortPieces: wanted.filter(({ piece }) => piece.nominal < rules.preferredPieceLength).length,
    cuts: boards.reduce((sum, board) => sum + cutsOf(wanted, board).cuts.length, 0),
    closeJoints: closeJoints(rows, divisions, rules.preferredStagger),
    unprovenEnds: bearings.filter(({ joist, bearing }) => isUnproven(joist, bearing.withinEdgeRules)).length,
    poorBearings: bearings.filter(({ bearing }) => bearing.outcome !== 'secure').length,
    narrowRows: rows.filter(({ band }) => band.width < rules.preferredRowWidth).length,
    heavyPieces:
      rules.pieceMass === null
        ? 0
        : wanted.filter(({ piece, width }) => (piece.cut / 1e6) * (width / 1e6) * density > (rules.pieceMass as number)).length,
    lengths: new Set(wanted.map(({ piece, width }) => `${piece.cut} ${width}`)).size,
    stockSizes: new Set(boards.map(({ stock }) => stock.board.id)).size,
    rippedRows: rows.filter(({ band }) => band.ripped).length,
  };
}

function closeJoints(rows: Laid['rows'], divisions: readonly Division[], preferred: number): number {
  let close = 0;
  for (let row = 1; row < divisions.length; row++) {
    if (rows[row].band.part !== rows[row - 1].band.part) continue;
    for (const here of divisions[row].joints) {
      close += divisions[row - 1].joints.filter((below) => Math.abs(here - below) < preferred).length;
    }
  }
  return close;
}

/** The measures in the order that a preference looks at them. */
export function inOrder(measures: Measures, prefer: Preference): number[] {
  const { boards, cost, area, joints, shortPieces, cuts, closeJoints, unprovenEnds, poorBearings, narrowRows } = measures;
  const rest = [shortPieces, cuts, closeJoints, measures.rippedRows];
  switch (prefer) {
    case 'boards':
      return [boards, area, joints, poorBearings, ...rest];
    case 'certainty':
      return [boards, area, unprovenEnds, joints, poorBearings, ...rest];
    case 'cost':
      return [cost, boards, area, joints, poorBearings, ...rest];
    case 'joints':
      return [joints, boards, area, poorBearings, ...rest];
    case 'estimator':
      return [cost, boards, area, measures.stockSizes, joints, cuts, closeJoints];
    default:
      return [
        measures.heavyPieces,
        unprovenEnds,
        poorBearings,
        narrowRows,
        2 * boards + joints,
        joints,
        shortPieces,
        measures.lengths,
        cuts,
        closeJoints,
        measures.rippedRows,
      ];
  }
}

export function isBetter(a: readonly number[], b: readonly number[]): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i] < b[i];
  return false;
}
