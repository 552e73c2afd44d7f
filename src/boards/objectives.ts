import { greatestCommonDivisor } from './greatestCommonDivisor.js';
import { type JointMerit, jointMerits } from './jointMerits.js';
import { jointWishes } from './jointWishes.js';
import type { JointWishes } from './nearnessOf.js';
import type { PlacementProblem } from './placementProblem.js';
import { widthOn } from './possiblePieces.js';
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

export type ObjectiveName =
  | 'boards'
  | 'area'
  | 'money'
  | 'joints'
  | 'boards and joints'
  | 'heavy pieces'
  | 'unproven ends'
  | 'poor bearings'
  | 'narrow rows'
  | 'short pieces'
  | 'beside old joints'
  | 'at inner corners'
  | 'in view'
  | 'off doubled joists';

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

/** What the preference looks at, first thing first. */
export function namesFor(problem: PlacementProblem): ObjectiveName[] {
  const { prefer, stocks, rules } = problem;
  const areas = stocks.some(({ area }) => area !== stocks[0].area) ? (['area'] as const) : [];
  // A crack begins where a long joint meets an inner corner.
  const corners = problem.request.room.outline.length > 4 ? (['at inner corners'] as const) : [];
  const { old, view } = wishesIn(problem);
  const merits = jointMerits(problem);
  const last: ObjectiveName[] = [
    ...(old ? (['beside old joints'] as const) : []),
    'short pieces',
    ...(view ? (['in view'] as const) : []),
    ...(merits.some(({ wide }) => wide) ? (['off doubled joists'] as const) : []),
  ];
  switch (prefer) {
    case 'certainty':
      return ['boards', ...areas, ...corners, 'unproven ends', 'joints', 'poor bearings', ...last];
    case 'cost':
    case 'estimator':
      return ['money', 'boards', ...areas, ...corners, 'joints', 'poor bearings', ...last];
    case 'joints':
      return ['joints', 'boards', ...areas, ...corners, 'poor bearings', ...last];
    case 'tradesperson':
      return [
        ...(rules.pieceMass === null ? [] : (['heavy pieces'] as const)),
        'unproven ends',
        'poor bearings',
        'narrow rows',
        ...corners,
        'boards and joints',
        'joints',
        'boards',
        ...last,
      ];
    default:
      return ['boards', ...areas, ...corners, 'joints', 'poor bearings', ...last];
  }
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
      return { name, fixed: 0, ofPiece: (graph, arc, band) => (isHeavy(problem, graph, arc, band) ? 1 : 0), boards: none };
    default:
      return {
        name,
        fixed: 0,
        ofPiece: (graph, arc) => ((graph.piece[arc]?.nominal ?? 0) < rules.preferredPieceLength ? 1 : 0),
        boards: none,
      };
  }
}

function isHeavy({ rules, stocks }: PlacementProblem, graph: RowGraph, arc: number, band: Band): boolean {
  const cut = graph.piece[arc]?.cut ?? 0;
  const mass = (cut / 1e6) * (widthOn(graph.piece[arc], band.width) / 1e6) * stocks[0].board.massPerArea;
  return rules.pieceMass !== null && mass > rules.pieceMass;
}
