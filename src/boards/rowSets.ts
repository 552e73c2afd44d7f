import { extentOf } from '../survey/outline.js';
import { type JointConflicts, jointConflicts, wordsFor } from './jointConflicts.js';
import { keepApart } from './keepApart.js';
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
 * that leave slivers, parts of a row narrower than a row may be, only those with fewest are kept. Rows are parted at necks; where on
 * no division they could then keep their joints apart, as many of them as can. `more` divisions are looked at with them.
 */
export function rowSets(problem: PlacementProblem, more: readonly RowLayout[] = []): RowSet[] {
  const rows = [...undominatedRows(problem, rowLayouts(problem)), ...more];
  const layouts = wishesIn(problem).rows ? bothWays(problem, rows) : rows;
  const words = wordsFor(problem);
  const parted = setsOn(problem, layouts);
  let laid = parted.filter(({ set }) => !set.rows.some(isParted) || staysApart(set, words));
  if (laid.length < 1 && parted.length > 0) {
    const whole = setsOn({ ...problem, rules: { ...problem.rules, neck: 0 } }, layouts);
    laid = whole.map((each, at) => ({ ...each, set: partlyParted(each.set, parted[at].set.rows, words) }));
  }
  const fewest = Math.min(...laid.map(({ slivers }) => slivers));
  return laid.filter(({ slivers }) => slivers === fewest).map(({ set }) => set);
}

const isParted = ({ runs }: PlacedRow): boolean => runs.some((run) => run.isParted);

const staysApart = ({ rows, conflicts }: RowSet, words: number): boolean =>
  keepApart(
    rows.map(({ graph }) => graph),
    conflicts,
    words,
  );

/** With each row parted at its necks that can be, those before it being what they are. */
function partlyParted(set: RowSet, parted: readonly PlacedRow[], words: number): RowSet {
  return parted.filter(isParted).reduce((before, row) => {
    const at = parted.indexOf(row);
    const after = { ...set, rows: before.rows.map((each, i) => (i === at ? row : each)) };
    return staysApart(after, words) ? after : before;
  }, set);
}

interface Divided {
  readonly set: RowSet;
  readonly slivers: number;
}

/** All ways to divide the rows of each division into pieces; without divisions that have a row for which there is none. */
function setsOn(problem: PlacementProblem, layouts: readonly RowLayout[]): Divided[] {
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
  const sets = layouts.map((layout): Divided => {
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
  return sets.filter(({ set }) => set.rows.every(({ graph }) => isDivided(graph)));
}

/** Each division of a plain rectangle from its other side too, where it matters what the rows lie beside. */
function bothWays({ parts, rowWidths }: PlacementProblem, layouts: readonly RowLayout[]): RowLayout[] {
  const [part] = parts;
  if (parts.length > 1 || part.clear !== undefined || rowWidths !== undefined || !isBare(part.standing)) return [...layouts];
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
  return { graph, slivers: sliversAmong(problem, stretches) };
}

function sliversAmong({ rules }: PlacementProblem, { shaped }: Stretches): number {
  const heights = shaped.map(({ outline }) => extentOf(outline)).map(({ low, high }) => high - low);
  return heights.filter((height) => height < rules.rowWidth).length;
}

/** How many slivers the rows of a division leave. */
export const sliversOn = (problem: PlacementProblem, { bands }: RowLayout): number =>
  bands.reduce((sum, band) => sum + sliversAmong(problem, stretchesOf(problem, problem.parts[band.part], band)), 0);

/** Rows of which this is the same can be divided alike: as many boards could fill them, and the same joists lie over them. */
function likeness({ stocks, parts, rules }: PlacementProblem, band: Band, { plain }: Stretches): string {
  const eligible = stocks.filter((stock) => stock.width >= band.width).length;
  const over = parts[band.part].joists.map((joist) => (reachesAcross(joist, band, rules.wallGap.greatest) ? 1 : 0)).join('');
  return `${eligible} ${over} ${plain.map(({ from, to, lowMeets, highMeets }) => `${from} ${to} ${lowMeets} ${highMeets}`).join()}`;
}
