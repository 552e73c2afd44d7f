import { corners } from '../survey/outline.js';
import { greatestCommonDivisor } from './greatestCommonDivisor.js';
import { isHeavy } from './isHeavy.js';
import { type JointMerit, jointMerits } from './jointMerits.js';
import { jointWishes } from './jointWishes.js';
import type { JointWishes } from './nearnessOf.js';
import type { PlacementProblem } from './placementProblem.js';
import { widthOn } from './possiblePieces.js';
import { isAfterwards, type ObjectiveName, preferredOrder } from './preferredOrder.js';
import type { RowGraph } from './rowGraph.js';
import type { Band } from './rowLayouts.js';
import type { RowSet } from './rowSets.js';
import { rowsAtInnerCorners } from './rowsAtInnerCorners.js';
import { rowWishes } from './rowWishes.js';
import type { Stock } from './stocksOf.js';
import { wishesIn } from './wishesIn.js';

/** What a layout is measured by, all in whole numbers: the sum over its pieces and boards. */
export interface Objective {
  readonly name: ObjectiveName;
  /** What the rows come to however they are divided. */
  readonly fixed: number;
  /** What the piece on an arc, with the butt joint at its end, counts for. */
  readonly ofPiece: (graph: RowGraph, arc: number, band: Band) => number;
  /** Per stock: what a board counts for. */
  readonly boards: readonly number[];
}

export type { ObjectiveName } from './preferredOrder.js';

const nothing = (): number => 0;

export function objectivesFor(problem: PlacementProblem, set: RowSet, names: readonly ObjectiveName[]): Objective[] {
  const known = jointMerits(problem);
  const wishes = jointWishes(problem);
  const ofRows = rowWishes(problem)(set.layout);
  return names.map((name): Objective => {
    if (name === 'beside old joints')
      return wished(problem, name, wishes, ofRows, (each) => each.onOldJoint + each.nearHatchCorner);
    if (name === 'in view') return wished(problem, name, wishes, ofRows, (each) => each.nearWindow + each.nearOpening);
    return objective(problem, set, name, known);
  });
}

/** What a search looks at for a preference, first thing first: of its order what may differ between layouts of this room. */
export function namesFor(problem: PlacementProblem): ObjectiveName[] {
  const { prefer, stocks, rules, request } = problem;
  const { old, view } = wishesIn(problem);
  const isAsked: Partial<Readonly<Record<ReturnType<typeof preferredOrder>[number], boolean>>> = {
    area: stocks.some(({ area }) => area !== stocks[0].area),
    // A crack begins where a long joint meets an inner corner.
    'at inner corners': corners(request.room.outline).length > 4,
    'heavy pieces': rules.pieceMass !== null,
    'beside old joints': old,
    'in view': view,
    'off doubled joists': jointMerits(problem).some(({ wide }) => wide),
  };
  return preferredOrder(prefer).filter((name): name is ObjectiveName => !isAfterwards(name) && (isAsked[name] ?? true));
}

function wished(
  { stocks }: PlacementProblem,
  name: ObjectiveName,
  wishes: ReturnType<typeof jointWishes>,
  ofRows: JointWishes,
  count: (wishes: JointWishes) => number,
): Objective {
  const ofPiece = (graph: RowGraph, arc: number, band: Band): number => {
    const piece = graph.piece[arc];
    if (piece === undefined || graph.joist[arc] < 0) return 0;
    return count(wishes(band, graph.runs[graph.run[arc]].places[piece.to].at));
  };
  return { name, fixed: count(ofRows), ofPiece, boards: stocks.map(() => 0) };
}

function objective(problem: PlacementProblem, set: RowSet, name: ObjectiveName, known: readonly JointMerit[]): Objective {
  const { stocks, rules } = problem;
  const none = stocks.map(() => 0);
  const bought =
    (value: number) =>
    ({ board }: Stock) =>
      board.atHand ? 0 : value;
  const unit = stocks.reduce((divisor, { area }) => greatestCommonDivisor(divisor, area), 0);
  const ofJoint = (holds: (merit: JointMerit) => boolean) => (graph: RowGraph, arc: number) =>
    graph.joist[arc] >= 0 && holds(known[graph.joist[arc]]) ? 1 : 0;
  const anyJoint = (graph: RowGraph, arc: number): number => (graph.joist[arc] >= 0 ? 1 : 0);
  switch (name) {
    case 'boards':
      return { name, fixed: 0, ofPiece: nothing, boards: stocks.map(bought(1)) };
    case 'area':
      return { name, fixed: 0, ofPiece: nothing, boards: stocks.map((stock) => (stock.board.atHand ? 0 : stock.area / unit)) };
    case 'money':
      return {
        name,
        fixed: 0,
        ofPiece: nothing,
        boards: stocks.map(({ board }) => (board.atHand ? 0 : Math.round((board.price ?? 0) * 1000))),
      };
    case 'joints':
      return { name, fixed: 0, ofPiece: anyJoint, boards: none };
    case 'boards and joints':
      return { name, fixed: 0, ofPiece: anyJoint, boards: stocks.map(bought(2)) };
    case 'unproven ends':
      return { name, fixed: 0, ofPiece: ofJoint(({ unproven }) => unproven), boards: none };
    case 'poor bearings':
      return { name, fixed: 0, ofPiece: ofJoint(({ poor }) => poor), boards: none };
    case 'narrow rows':
      return {
        name,
        fixed: set.rows.filter(({ band }) => band.width < rules.preferredRowWidth).length,
        ofPiece: nothing,
        boards: none,
      };
    case 'at inner corners':
      return { name, fixed: rowsAtInnerCorners(problem, set.layout), ofPiece: nothing, boards: none };
    case 'off doubled joists':
      return { name, fixed: 0, ofPiece: ofJoint(({ wide }) => !wide), boards: none };
    case 'heavy pieces':
      return { name, fixed: 0, ofPiece: heavyPiece(problem), boards: none };
    default:
      return {
        name,
        fixed: 0,
        ofPiece: (graph, arc) => ((graph.piece[arc]?.nominal ?? 0) < rules.preferredPieceLength ? 1 : 0),
        boards: none,
      };
  }
}

const heavyPiece =
  (problem: PlacementProblem): Objective['ofPiece'] =>
  ({ piece }, arc, { width }) => {
    const here = piece[arc];
    return here !== undefined && isHeavy(problem, here, widthOn(here, width)) ? 1 : 0;
  };
