import { toGrid } from '../survey/grid.js';
import { problem as inputProblem, refuse } from '../survey/inputError.js';
import type { Edges } from './box.js';
import type { Part } from './partsOf.js';
import type { PlacementProblem } from './placementProblem.js';
import type { Reach } from './reachOf.js';

/** A row where pieces are up, or one to be laid between them. */
type Rows = readonly Edges[];

/** The bands of the pieces that are up: pieces that lie beside each other share one. From the low side. */
export function lockedBands(up: readonly Edges[]): Edges[] {
  const bands: { low: number; high: number }[] = [];
  for (const { low, high } of [...up].sort((a, b) => a.low - b.low)) {
    const last = bands[bands.length - 1];
    if (last !== undefined && low < last.high) last.high = Math.max(last.high, high);
    else bands.push({ low, high });
  }
  return bands;
}

/** Ways to fill the room with rows between those that are up, told apart by the edges of the rows; the first few of many. */
const MOST_WAYS = 200;
/** An edge that is no further off than this is in its place, grid steps. */
const HAIR = toGrid(0.01);

type FullRows = (inner: Reach) => readonly (readonly number[])[];

/**
 * Every way to divide a part into rows round those that are up, which stay where they are: full rows, and between two rows that
 * are up, or such a row and a wall, at most one that is ripped; beside a wall, if there is one, it is the row at the wall.
 */
export function rowsAroundLocked(problem: PlacementProblem, part: Part, reach: Reach, full: FullRows): Rows[] {
  const own = lockedBands(part.standing.up);
  const widths = [...new Set(problem.stocks.map(({ width }) => width))];
  return widened(own, part.clear === undefined ? [] : widths, reach)
    .flatMap((bands) => rowsAroundBands(problem, bands, reach, full))
    .slice(0, MOST_WAYS);
}

/** Bands as they are and, where walls may have left pieces narrower than their rows, one of them as wide as a board. */
function widened(bands: readonly Edges[], widths: readonly number[], { low, high }: Reach): Rows[] {
  const wider = bands.flatMap((band, at) =>
    widths.flatMap((width): Rows[] => {
      if (band.high - band.low >= width) return [];
      const [below, above] = [bands[at - 1]?.high ?? low, bands[at + 1]?.low ?? high];
      const options = [
        { low: band.low, high: band.low + width },
        { low: band.high - width, high: band.high },
      ];
      return options
        .filter((row) => row.low >= below && row.high <= above)
        .map((row) => bands.map((each, i) => (i === at ? row : each)));
    }),
  );
  return [bands, ...wider];
}

function rowsAroundBands(problem: PlacementProblem, bands: Rows, reach: Reach, full: FullRows): Rows[] {
  const { edgeGap } = problem.rules;
  const highWall = reach.sides - Number(reach.lowWall) > 0;
  let ways: Rows[] = [[]];
  for (let i = 0; i <= bands.length; i++) {
    const [before, after] = [bands[i - 1], bands[i]] as readonly (Edges | undefined)[];
    const low = before === undefined ? reach.low : before.high + edgeGap;
    const high = after === undefined ? reach.high : after.low - edgeGap;
    const [atLow, atHigh] = [before === undefined && reach.lowWall, after === undefined && highWall];
    const gap: Gap = {
      low,
      high,
      lowWall: atLow,
      sides: Number(atLow) + Number(atHigh),
      isFirst: before === undefined,
      isLast: after === undefined,
    };
    const between = fillings(problem, gap, full);
    ways = ways
      .flatMap((way) => between.map((rows) => [...way, ...rows, ...(after === undefined ? [] : [after])]))
      .slice(0, MOST_WAYS);
  }
  return ways;
}

/** What lies between two rows that are up, or such a row and the border of the part. */
interface Gap extends Reach {
  readonly isFirst: boolean;
  readonly isLast: boolean;
}

function fillings(problem: PlacementProblem, gap: Gap, full: FullRows): Rows[] {
  const { wallGap, edgeGap, rowWidth } = problem.rules;
  const { low: from, high: to, sides } = gap;
  const [wider, narrower] = sides > 0 ? [wallGap.nominal - wallGap.least, wallGap.greatest - wallGap.nominal] : [HAIR, HAIR];
  if (to - from <= narrower) return to - from >= -wider - edgeGap ? [[]] : [];
  const widest = Math.max(...problem.stocks.map((stock) => stock.width));
  const least = Math.max(rowWidth, 1);
  return full(gap).flatMap((widths): Rows[] => {
    const rest = to - from - widths.reduce((sum, width) => sum + width + edgeGap, 0);
    // Beside the low wall the rows are counted from the row above them.
    const start = (used: number): number => (gap.isFirst ? from + rest - used : from);
    const ripped = rest < least && rest + wider >= least ? least : rest;
    const isWhole = widths.length > 0 && rest + edgeGap <= narrower && rest + edgeGap >= -wider;
    const ordered = gap.isLast ? [...widths, ripped] : [ripped, ...widths];
    return [
      ...(isWhole ? [stacked(problem, widths, start(-edgeGap))] : []),
      ...(ripped >= least && ripped < widest ? [stacked(problem, ordered, start(ripped))] : []),
    ];
  });
}

function stacked({ rules }: PlacementProblem, widths: readonly number[], from: number): Edges[] {
  let low = from;
  return widths.map((width) => {
    const row = { low, high: low + width };
    low = row.high + rules.edgeGap;
    return row;
  });
}

/**
 * Rows of these widths, pushed along until they lie where pieces are up. Where a wall or an opening leaves a piece narrower than its
 * row, that row holds it.
 *
 * @throws InputError when pieces that are up lie in no row
 */
export function pinnedAroundLocked<R extends Edges>({ standing, depth }: Part, pinned: readonly R[]): Rows {
  const bands = lockedBands(standing.up);
  const away = bands.flatMap((band) => {
    const row = pinned.find(({ low, high }) => 2 * low < band.low + band.high && band.low + band.high < 2 * high);
    return row !== undefined && Math.abs(row.high - row.low - band.high + band.low) <= HAIR ? [band.low - row.low] : [];
  })[0];
  const pushed = pinned.map(({ low, high }) => ({ low: low + (away ?? 0), high: high + (away ?? 0) }));
  const isInside = pushed[0].low >= 0 && pushed[pushed.length - 1].high <= depth;
  const isInRow = (band: Edges): boolean => pushed.some(({ low, high }) => band.low >= low - HAIR && band.high <= high + HAIR);
  if (!isInside || !bands.every(isInRow)) {
    refuse(inputProblem('rows-do-not-fit', 'rowWidths', 'rows that the locked pieces lie in', 'others'));
  }
  return pushed.map(
    (row) => bands.find((band) => Math.abs(row.low - band.low) <= HAIR && Math.abs(row.high - band.high) <= HAIR) ?? row,
  );
}
