import { type JointConflicts, jointConflicts } from './jointConflicts.js';
import type { PlacementProblem } from './placementProblem.js';
import { type Run, runsOf } from './possiblePieces.js';
import { type RowGraph, rowGraph } from './rowGraph.js';
import { type Band, type RowLayout, rowLayouts } from './rowLayouts.js';
import { isBare } from './standing.js';
import { undominatedRows } from './undominatedRows.js';

/** A row with its runs and the network of its divisions. */
export interface PlacedRow {
  readonly band: Band;
  readonly runs: readonly Run[];
  readonly graph: RowGraph;
}

/** One way to divide the room into rows, with all ways to divide each row into pieces. */
export interface RowSet {
  readonly layout: RowLayout;
  readonly rows: readonly PlacedRow[];
  /** Between each row and the next. */
  readonly conflicts: readonly JointConflicts[];
}

/** Every way to divide the room into rows that an answer may need. Rows that can be divided alike share one network. */
export function rowSets(problem: PlacementProblem): RowSet[] {
  const graphs = new Map<string, RowGraph>();
  const known = new Map<string, JointConflicts>();
  const everywhere = problem.parallel && problem.openings.length === 0 && isBare(problem.standing);
  const conflictsOf = (below: Band, above: Band): JointConflicts => {
    const key = problem.parallel ? '' : `${below.low} ${below.high} ${above.low} ${above.high}`;
    const conflicts = known.get(key) ?? jointConflicts(problem, below, above);
    known.set(key, conflicts);
    return conflicts;
  };
  return undominatedRows(problem, rowLayouts(problem)).map((layout) => ({
    layout,
    rows: layout.bands.map((band): PlacedRow => {
      const eligible = problem.stocks.filter((stock) => stock.width >= band.width).length;
      const key = everywhere ? `${eligible}` : `${band.low} ${band.high}`;
      const graph = graphs.get(key) ?? rowGraph(runsOf(problem, band));
      graphs.set(key, graph);
      return { band, runs: graph.runs, graph };
    }),
    conflicts: layout.bands.slice(1).map((band, row) => conflictsOf(layout.bands[row], band)),
  }));
}
