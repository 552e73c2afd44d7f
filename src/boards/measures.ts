import { bearingOf } from '../joists/bearing.js';
import { cutsOf } from './cutsOfBoard.js';
import { isHeavy } from './isHeavy.js';
import type { Division, Laid, Measures } from './laid.js';
import type { PlacementProblem } from './placementProblem.js';
import type { Preference } from './preference.js';
import { preferredOrder } from './preferredOrder.js';
import { isUnproven } from './unproven.js';

export function measure(problem: PlacementProblem, laid: Omit<Laid, 'measures'>): Measures {
  const { rules } = problem;
  const { rows, divisions, wanted, boards } = laid;
  const joints = divisions.flatMap((division) => division.joists.map((index) => problem.joists[index].joist));
  const bearings = joints.map((joist) => ({ joist, bearing: bearingOf(joist, 0, rules.jointGap / 1000, problem.set) }));
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
    heavyPieces: wanted.filter(({ piece, width }) => isHeavy(problem, piece, width)).length,
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

/**
 * The measures in the order that a preference looks at them. Inner corners, old joints, light and doubled joists are not among them:
 * a search that looks at them has left none of its layouts behind another in these.
 */
export function inOrder(measures: Measures, prefer: Preference): number[] {
  const measured: Partial<Readonly<Record<ReturnType<typeof preferredOrder>[number], number>>> = {
    money: measures.cost,
    boards: measures.boards,
    area: measures.area,
    joints: measures.joints,
    'boards and joints': 2 * measures.boards + measures.joints,
    'heavy pieces': measures.heavyPieces,
    'unproven ends': measures.unprovenEnds,
    'poor bearings': measures.poorBearings,
    'narrow rows': measures.narrowRows,
    'short pieces': measures.shortPieces,
    'stock sizes': measures.stockSizes,
    lengths: measures.lengths,
    cuts: measures.cuts,
    'close joints': measures.closeJoints,
    'ripped rows': measures.rippedRows,
  };
  return preferredOrder(prefer).flatMap((name) => measured[name] ?? []);
}
