import { greatestCommonDivisor } from './heaviestBoard.js';
import { type JointMerit, jointMerits } from './jointMerits.js';
import type { PlacementProblem } from './placementProblem.js';
import { widthOn } from './possiblePieces.js';
import type { RowGraph } from './rowGraph.js';
import type { Band } from './rowLayouts.js';
import type { RowSet } from './rowSets.js';
import type { Stock } from './stocksOf.js';

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
  | 'short pieces';

const nothing = (): number => 0;

export function objectivesFor(problem: PlacementProblem, set: RowSet, names: readonly ObjectiveName[]): Objective[] {
  const known = jointMerits(problem);
  return names.map((name) => objective(problem, set, name, known));
}

/** What the preference looks at, first thing first. */
export function namesFor({ prefer, stocks, rules }: PlacementProblem): ObjectiveName[] {
  const areas = stocks.some(({ area }) => area !== stocks[0].area) ? (['area'] as const) : [];
  switch (prefer) {
    case 'certainty':
      return ['boards', ...areas, 'unproven ends', 'joints', 'poor bearings', 'short pieces'];
    case 'cost':
    case 'estimator':
      return ['money', 'boards', ...areas, 'joints', 'poor bearings', 'short pieces'];
    case 'joints':
      return ['joints', 'boards', ...areas, 'poor bearings', 'short pieces'];
    case 'tradesperson':
      return [
        ...(rules.pieceMass === null ? [] : (['heavy pieces'] as const)),
        'unproven ends',
        'poor bearings',
        'narrow rows',
        'boards and joints',
        'joints',
        'boards',
        'short pieces',
      ];
    default:
      return ['boards', ...areas, 'joints', 'poor bearings', 'short pieces'];
  }
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
