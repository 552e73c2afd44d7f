import { fromGrid } from '../survey/grid.js';
import { problem, refuse } from '../survey/inputError.js';
import type { PlacementProblem } from './placementProblem.js';
import { pinnedAroundLocked, rowsAroundLocked } from './rowsAroundLocked.js';
import type { Edges } from './standingJoints.js';

/** One row: a band across the joists, in grid steps. */
export interface Band {
  readonly low: number;
  readonly high: number;
  readonly width: number;
  /** Narrower than every board that could fill it whole. */
  readonly ripped: boolean;
}

/** One way to divide the room into rows, from the low side up. */
export interface RowLayout {
  /** Gap at the two walls that the rows run along. */
  readonly gap: number;
  readonly bands: readonly Band[];
}

/**
 * Every way to divide the room into rows that an answer may need: full rows, and at most one ripped row at each side.
 *
 * Where both side rows are ripped, how many strips of each width a board gives changes only where
 * `a (first + kerf) + b (last + kerf)` passes the board's width plus kerf for whole `a` and `b`. Between two such widths the
 * strips of a board are the same or fewer than at either of them, so those widths, the least row and the balanced pair are
 * all that has to be tried.
 */
export function rowLayouts(problem: PlacementProblem): RowLayout[] {
  if (problem.rowWidths !== undefined) return [pinnedRows(problem, problem.rowWidths)];
  if (problem.standing.up.length > 0) {
    const full = (depth: number) => fullRows({ ...problem, depth: depth + 2 * problem.rules.wallGap.least });
    return rowsAroundLocked(problem, full).map((rows) => between(problem, rows));
  }
  const { wallGap } = problem.rules;
  const layouts: RowLayout[] = [];
  const seen = new Set<string>();
  const add = (widths: readonly number[], gap: number): void => {
    const key = `${gap}:${widths.join(' ')}`;
    if (seen.has(key)) return;
    seen.add(key);
    layouts.push(laid(problem, widths, gap));
  };
  for (const full of fullRows(problem)) {
    const used = full.reduce((sum, width) => sum + width, 0);
    const rest = problem.depth - 2 * wallGap.nominal - used - full.length * problem.rules.edgeGap;
    addAround(problem, full, rest, add);
  }
  return layouts;
}

/** All rows that go with these full ones, `rest` being what is left beyond them and the gaps after each of them. */
function addAround(
  problem: PlacementProblem,
  full: readonly number[],
  rest: number,
  add: (widths: readonly number[], gap: number) => void,
): void {
  const { wallGap, edgeGap, rowWidth } = problem.rules;
  const widest = Math.max(...problem.stocks.map((stock) => stock.width));
  const least = Math.max(rowWidth, 1);
  // With full rows only, the last of them has no gap after it.
  const spare = rest + edgeGap;
  const gapThen = wallGap.nominal + Math.floor(spare / 2);
  if (full.length > 0 && gapThen >= wallGap.least && wallGap.nominal + Math.ceil(spare / 2) <= wallGap.greatest)
    add(full, gapThen);
  if (rest >= least && rest < widest) add([...full, rest], wallGap.nominal);
  else if (rest < least && rest > 0 && rest + 2 * (wallGap.nominal - wallGap.least) >= least) {
    add([...full, least], wallGap.nominal - Math.ceil((least - rest) / 2));
  }
  const pair = rest - edgeGap;
  if (pair >= 2 * least && pair < 2 * widest) {
    for (const first of firstWidths(problem, pair, least)) {
      if (first < widest && pair - first < widest) add([first, ...full, pair - first], wallGap.nominal);
    }
  }
}

/** Widths of boards, widest first; those of offcuts only where there is nothing else. */
function wholeWidths({ stocks }: PlacementProblem): number[] {
  const bought = stocks.filter(({ board }) => board.atHand !== true);
  return [...new Set((bought.length > 0 ? bought : stocks).map(({ width }) => width))].sort((a, b) => b - a);
}

/** Multisets of stock widths that leave room for at most two ripped rows, widest first. */
function fullRows(problem: PlacementProblem): number[][] {
  const widths = wholeWidths(problem);
  const room = problem.depth - 2 * problem.rules.wallGap.least;
  const found: number[][] = [];
  const extend = (rows: number[], used: number, from: number): void => {
    if (room - used < 2 * widths[0]) found.push(rows);
    for (let i = from; i < widths.length; i++) {
      const next = used + widths[i] + problem.rules.edgeGap;
      if (next - problem.rules.edgeGap <= room) extend([...rows, widths[i]], next, i);
    }
  };
  extend([], 0, 0);
  return found;
}

/** More strips than this from one board never matter: no row needs them. */
const MOST_STRIPS = 12;

/** Widths of the first of two ripped rows that together take `pair`, the wider one first. */
function firstWidths(problem: PlacementProblem, pair: number, least: number): number[] {
  const half = Math.ceil(pair / 2);
  const found = new Set([half, pair - least]);
  for (const { width, kerf } of problem.stocks) {
    const most = Math.min(MOST_STRIPS, Math.floor((width + kerf) / (least + kerf)));
    for (let a = 0; a <= most; a++) {
      for (let b = 0; a + b <= most; b++) {
        if (a === b) continue;
        // a (first + kerf) + b (pair - first + kerf) <= width + kerf
        const limit = (width + kerf - (a + b) * kerf - b * pair) / (a - b);
        found.add(a > b ? Math.floor(limit) : Math.ceil(limit));
      }
    }
  }
  return [...found].filter((first) => first >= half && pair - first >= least).sort((a, b) => a - b);
}

function pinnedRows(problem: PlacementProblem, widths: readonly number[]): RowLayout {
  const { wallGap, edgeGap } = problem.rules;
  const widest = Math.max(...problem.stocks.map((stock) => stock.width));
  widths.forEach((width, index) => {
    if (width > widest) {
      const at = problem.mirrored.v ? widths.length - 1 - index : index;
      refuse(wrongWidth(`rowWidths[${at}]`, `at most the widest board, ${fromGrid(widest)}`, fromGrid(width)));
    }
  });
  const total = widths.reduce((sum, width) => sum + width, 0) + (widths.length - 1) * edgeGap;
  const spare = problem.depth - total;
  if (spare < 2 * wallGap.least || spare > 2 * wallGap.greatest) {
    const [least, greatest] = [problem.depth - 2 * wallGap.greatest, problem.depth - 2 * wallGap.least].map(fromGrid);
    const wanted = least === greatest ? `rows that make ${least} in all` : `rows that make ${least} to ${greatest} in all`;
    refuse(wrongWidth('rowWidths', wanted, fromGrid(total)));
  }
  const rows = laid(problem, widths, Math.floor(spare / 2));
  return problem.standing.up.length === 0 ? rows : between(problem, pinnedAroundLocked(problem, rows.bands));
}

/** Rows with these edges. */
function between(problem: PlacementProblem, rows: readonly Edges[]): RowLayout {
  const whole = new Set(wholeWidths(problem));
  return {
    gap: rows[0].low,
    bands: rows.map(({ low, high }) => ({ low, high, width: high - low, ripped: !whole.has(high - low) })),
  };
}

const wrongWidth = (path: string, expected: string, received: number) =>
  problem('rows-do-not-fit', path, expected, String(received));

function laid(problem: PlacementProblem, widths: readonly number[], gap: number): RowLayout {
  const whole = new Set(wholeWidths(problem));
  let low = gap;
  const bands = widths.map((width): Band => {
    const band = { low, high: low + width, width, ripped: !whole.has(width) };
    low = band.high + problem.rules.edgeGap;
    return band;
  });
  return { gap, bands };
}
