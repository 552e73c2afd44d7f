import { fromGrid } from '../survey/grid.js';
import { problem, refuse } from '../survey/inputError.js';
import type { Edges } from './box.js';
import { eachFullRows, firstWidths, fullRows, outermostWidths, wholeWidths } from './fullRows.js';
import type { Part } from './partsOf.js';
import type { PlacementProblem } from './placementProblem.js';
import { preferredOrder } from './preferredOrder.js';
import { type Reach, reachOf } from './reachOf.js';
import { pinnedAroundLocked, rowsAroundLocked } from './rowsAroundLocked.js';
import { rowsAtCorners } from './rowsAtCorners.js';
import { wishesIn } from './wishesIn.js';

/** One row: a band across the joists, in grid steps. */
export interface Band {
  readonly low: number;
  readonly high: number;
  readonly width: number;
  /** Narrower than every board that could fill it whole. */
  readonly ripped: boolean;
  /** Which part of the ceiling it lies in. */
  readonly part: number;
  /** Gap at the walls of that part that the rows run along. */
  readonly gap: number;
}

/** One way to divide the room into rows: one part after another, each from its low side up. */
export interface RowLayout {
  /** Gap at the two walls that the rows run along, in the first part. */
  readonly gap: number;
  readonly bands: readonly Band[];
}

/** Divisions of a whole ceiling that are looked at where it has several parts. */
const MOST_LAYOUTS = 25;

/** Divisions of one part that differ in how wide the first row is. */
export interface RowFamily {
  readonly gap: number;
  /** The least and the greatest width of the first row; equal where there is one division only. */
  readonly from: number;
  readonly to: number;
  readonly bands: (first: number) => readonly Band[];
}

/**
 * Every way to divide the room into rows that an answer may need: full rows, and at most one ripped row at each side; in a part
 * that is no plain rectangle also rows whose edges fall on corners of its outline ({@link rowsAtCorners}).
 *
 * Where both side rows are ripped, how many strips of each width a board gives changes only where
 * `a (first + kerf) + b (last + kerf)` passes the board's width plus kerf for whole `a` and `b`. Between two such widths the
 * strips of a board are the same or fewer than at either of them, so those widths, the least row and the balanced pair are
 * all that has to be tried.
 *
 * Every division of one part goes with every division of another, the first few of each where there are many: those with fewest ripped
 * rows.
 *
 * In a room that is no plain rectangle a search for few boards begins with the least row and the balanced pair, and goes on where fewer
 * boards may do (rowsBetween.ts); `every`: no fewer than elsewhere.
 */
export function rowLayouts(problem: PlacementProblem, every = false): RowLayout[] {
  const ofParts = problem.parts.map((part, index) => rowsOfPart(problem, part, index, every));
  if (ofParts.length > 1) for (const rows of ofParts) rows.sort((a, b) => rippedIn(a) - rippedIn(b));
  let each = 1;
  while ((each + 1) ** ofParts.length <= MOST_LAYOUTS) each++;
  let layouts = ofParts[0].map(asLayout);
  if (ofParts.length > 1) layouts = layouts.slice(0, each);
  for (const rows of ofParts.slice(1)) {
    layouts = layouts.flatMap(({ gap, bands }) => rows.slice(0, each).map((more) => ({ gap, bands: [...bands, ...more] })));
  }
  return layouts;
}

const rippedIn = (bands: readonly Band[]): number => bands.filter(({ ripped }) => ripped).length;

const asLayout = (bands: readonly Band[]): RowLayout => ({ gap: bands[0].gap, bands });

/** Rows of one part: bands from its low side up. */
function rowsOfPart(problem: PlacementProblem, part: Part, index: number, every: boolean): Band[][] {
  const reach = reachOf(part, problem.rules.wallGap);
  const bandsOf = (widths: readonly number[], gap: number, shift?: number): Band[] =>
    bandsFrom(problem, reach, index, widths, gap, shift);
  const isStanding = part.standing.up.length > 0;
  const between = (rows: readonly Edges[], gap: number): Band[] => bandsBetween(problem, index, rows, gap);
  if (problem.rowWidths !== undefined) {
    const pinned = pinnedRows(problem, part, reach, bandsOf);
    if (!isStanding) return [pinned];
    const rows = pinnedAroundLocked(part, pinned);
    return [between(rows, pinned[0].gap + rows[0].low - pinned[0].low)];
  }
  if (isStanding) {
    const { nominal } = problem.rules.wallGap;
    return rowsAroundLocked(problem, part, reach, (inner) => fullRows(problem, inner)).map((rows) =>
      between(rows, nominal + (reach.lowWall ? rows[0].low - reach.low : 0)),
    );
  }
  // A room in one part is turned about once it is known which of its divisions are worth it.
  const isOnOneSide = problem.parts.length > 1 && wishesIn(problem).rows;
  const isFollowed = part.clear !== undefined && problem.parts.length === 1 && preferredOrder(problem.prefer)[0] === 'boards';
  const layouts: Band[][] = [];
  const seen = new Set<string>();
  const add = (widths: readonly number[], gap: number): void => {
    const key = `${gap}:${widths.join(' ')}`;
    if (seen.has(key)) return;
    seen.add(key);
    layouts.push(bandsOf(widths, gap));
    // From one side or from the other it is the same only where both sides and all joists are alike.
    if (part.clear !== undefined || !part.parallel || isOnOneSide) add([...widths].reverse(), gap);
  };
  const { nominal } = problem.rules.wallGap;
  eachFullRows(problem, reach, add, (full, pair, { to }) => {
    const least = Math.max(problem.rules.rowWidth, 1);
    const firsts = isFollowed && !every ? outermostWidths(pair, least) : firstWidths(problem, pair, least);
    for (const first of firsts) if (first <= to) add([first, ...full, pair - first], nominal);
  });
  for (const widths of rowsAtCorners(problem, part, reach)) add(widths, nominal);
  return layouts;
}

/** The divisions of a part, those that differ only in the width of the first row told as one. */
export function rowFamilies(problem: PlacementProblem, index: number): RowFamily[] {
  const part = problem.parts[index];
  const { nominal } = problem.rules.wallGap;
  const reach = reachOf(part, problem.rules.wallGap);
  const families: RowFamily[] = [];
  const bothWays = (widths: readonly number[]): (readonly number[])[] =>
    new Set(widths).size > 1 ? [widths, [...widths].reverse()] : [widths];
  const add = (given: readonly number[], gap: number): void => {
    for (const widths of bothWays(given)) {
      const bands = bandsFrom(problem, reach, index, widths, gap);
      families.push({ gap, from: widths[0], to: widths[0], bands: () => bands });
    }
  };
  eachFullRows(problem, reach, add, (given, pair, { from, to }) => {
    for (const full of bothWays(given)) {
      const bands = (first: number): Band[] => bandsFrom(problem, reach, index, [first, ...full, pair - first], nominal);
      families.push({ gap: nominal, from, to, bands });
    }
  });
  for (const widths of rowsAtCorners(problem, part, reach)) add(widths, nominal);
  return families;
}

function pinnedRows(
  problem: PlacementProblem,
  { rowWidths: { widths, from }, mirrored, depth }: Part,
  { low, high, sides }: Reach,
  bandsOf: (widths: readonly number[], gap: number, shift?: number) => Band[],
): Band[] {
  const { wallGap, edgeGap } = problem.rules;
  const widest = Math.max(...problem.stocks.map((stock) => stock.width));
  widths.forEach((width, index) => {
    if (width > widest) {
      const at = from + (mirrored.v ? widths.length - 1 - index : index);
      refuse(wrongWidth(`rowWidths[${at}]`, `at most the widest board, ${fromGrid(widest)}`, fromGrid(width)));
    }
  });
  const total = widths.reduce((sum, width) => sum + width, 0) + (widths.length - 1) * edgeGap;
  const spare = high - low - total;
  // Where a part narrows towards its end, rows may reach beyond what is boarded there; no further than the gap to its tip allows.
  const [beyondLow, beyondHigh] = [low - wallGap.least, depth - high - wallGap.least].map((beyond) => Math.max(0, beyond));
  const short = (low > 0 ? 1 : 0) + (high < depth ? 1 : 0);
  const [least, greatest] = [-beyondLow - beyondHigh, short * (wallGap.greatest - wallGap.nominal)];
  if (spare < least || spare > greatest || widths.length === 0) {
    const [from, to] = [high - low - greatest, high - low - least].map(fromGrid);
    const wanted = from === to ? `rows that make ${from} in all` : `rows that make ${from} to ${to} in all`;
    refuse(wrongWidth('rowWidths', wanted, fromGrid(total)));
  }
  const share = sides === 0 ? 0 : Math.floor(spare / sides);
  if (share >= wallGap.least - wallGap.nominal && share <= wallGap.greatest - wallGap.nominal && short === sides)
    return bandsOf(widths, wallGap.nominal + share);
  const shift = Math.max(-beyondLow, Math.min(Math.floor(spare / 2), spare + beyondHigh));
  return bandsOf(widths, wallGap.nominal, low > 0 ? shift : 0);
}

const wrongWidth = (path: string, expected: string, received: number) =>
  problem('rows-do-not-fit', path, expected, String(received));

function bandsFrom(
  problem: PlacementProblem,
  reach: Reach,
  part: number,
  widths: readonly number[],
  gap: number,
  shift = reach.lowWall ? gap - problem.rules.wallGap.nominal : 0,
): Band[] {
  const whole = new Set(wholeWidths(problem));
  let low = reach.low + shift;
  return widths.map((width): Band => {
    const band = { low, high: low + width, width, ripped: !whole.has(width), part, gap };
    low = band.high + problem.rules.edgeGap;
    return band;
  });
}

/** Rows with these edges, some of which are up. */
function bandsBetween(problem: PlacementProblem, part: number, rows: readonly Edges[], gap: number): Band[] {
  const whole = new Set(wholeWidths(problem));
  return rows.map(({ low, high }) => ({ low, high, width: high - low, ripped: !whole.has(high - low), part, gap }));
}
