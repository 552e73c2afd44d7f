import { extentOf } from '../survey/outline.js';
import { type JointConflicts, jointConflicts } from './jointConflicts.js';
import type { PlacementProblem } from './placementProblem.js';
import { reachesAcross } from './plainRun.js';
import type { Run } from './possiblePieces.js';
import { isDivided, type RowGraph, rowGraph } from './rowGraph.js';
import { type Band, type RowLayout, rowLayouts } from './rowLayouts.js';
import { runsOf, type Stretches, stretchesOf } from './runsOf.js';
import { isBare } from './standing.js';
import { undominatedRows } from './undominatedRows.js';
import { wishesIn } from './wishesIn.js';

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

/**
 * Every way to divide the room into rows that an answer may need. Rows that can be divided alike share one network. Of divisions
 * that leave slivers, parts of a row narrower than a row may be, only those with fewest are kept.
 */
export function rowSets(problem: PlacementProblem): RowSet[] {
  const rows = new Map<string, Found>();
  const graphs = new Map<string, RowGraph>();
  const conflicts = new Map<string, JointConflicts>();
  const found = (band: Band): Found => {
    const key = `${band.part} ${band.gap} ${band.low} ${band.high}`;
    const known = rows.get(key) ?? findRow(problem, band, key, graphs);
    rows.set(key, known);
    return known;
  };
  const between = (below: Band, above: Band): JointConflicts => {
    const same = below.part === above.part;
    const parallel = same && problem.parts[above.part].parallel;
    const key = same ? `${above.part}${parallel ? '' : ` ${below.low} ${below.high} ${above.low} ${above.high}`}` : '';
    const known = conflicts.get(key) ?? jointConflicts(problem, below, above);
    conflicts.set(key, known);
    return known;
  };
  const layouts = undominatedRows(problem, rowLayouts(problem));
  const sets = (wishesIn(problem).rows ? bothWays(problem, layouts) : layouts).map((layout) => {
    const its = layout.bands.map(found);
    return {
      slivers: its.reduce((sum, { slivers }) => sum + slivers, 0),
      set: {
        layout,
        rows: layout.bands.map((band, row): PlacedRow => ({ band, runs: its[row].graph.runs, graph: its[row].graph })),
        conflicts: layout.bands.slice(1).map((band, row) => between(layout.bands[row], band)),
      },
    };
  });
  const laid = sets.filter(({ set }) => set.rows.every(({ graph }) => isDivided(graph)));
  const fewest = Math.min(...laid.map(({ slivers }) => slivers));
  return laid.filter(({ slivers }) => slivers === fewest).map(({ set }) => set);
}

/** Each division of a plain rectangle from its other side too, where it matters what the rows lie beside. */
function bothWays({ parts: [part], rowWidths }: PlacementProblem, layouts: readonly RowLayout[]): RowLayout[] {
  if (part.clear !== undefined || rowWidths !== undefined || !isBare(part.standing)) return [...layouts];
  const turned = layouts.map(
    ({ gap, bands }): RowLayout => ({
      gap,
      bands: bands.map((band) => ({ ...band, low: part.depth - band.high, high: part.depth - band.low })).reverse(),
    }),
  );
  const seen = new Set<string>();
  return [...layouts, ...turned].filter(({ bands }) => {
    const key = bands.map(({ low, high }) => `${low} ${high}`).join();
    return !seen.has(key) && seen.add(key);
  });
}

interface Found {
  readonly graph: RowGraph;
  readonly slivers: number;
}

function findRow(problem: PlacementProblem, band: Band, place: string, graphs: Map<string, RowGraph>): Found {
  const part = problem.parts[band.part];
  const stretches = stretchesOf(problem, part, band);
  const key =
    part.parallel && stretches.shaped.length === 0 && isBare(part.standing)
      ? `${band.part} ${likeness(problem, band, stretches)}`
      : place;
  const graph = graphs.get(key) ?? rowGraph(runsOf(problem, part, band, stretches));
  graphs.set(key, graph);
  const narrow = ({ outline }: Stretches['shaped'][number]): boolean => {
    const { low, high } = extentOf(outline);
    return high - low < problem.rules.rowWidth;
  };
  return { graph, slivers: stretches.shaped.filter(narrow).length };
}

/** Rows of which this is the same can be divided alike: as many boards could fill them, and the same joists lie over them. */
function likeness({ stocks, parts, rules }: PlacementProblem, band: Band, { plain }: Stretches): string {
  const eligible = stocks.filter((stock) => stock.width >= band.width).length;
  const over = parts[band.part].joists.map((joist) => (reachesAcross(joist, band, rules.wallGap.greatest) ? 1 : 0)).join('');
  return `${eligible} ${over} ${plain.map(({ from, to, lowMeets, highMeets }) => `${from} ${to} ${lowMeets} ${highMeets}`).join()}`;
}
