import { boardBound, type PlacedRow } from './boardBound.js';
import { inOrder, isBetter, type Laid, type Measures, measure } from './measures.js';
import { type PackedBoard, packBoards, type WantedPiece } from './packBoards.js';
import type { PlacementProblem } from './placementProblem.js';
import { type Run, runsOf } from './possiblePieces.js';
import { type RowLayout, rowLayouts } from './rowLayouts.js';
import { fewestFrom, type RowPattern, rowPatterns } from './rowPatterns.js';

/** What a search found. */
export interface Found {
  /** Nothing when no way to lay the room was found. */
  readonly laid: Laid | undefined;
  /** No layout has fewer boards; Infinity when there is none at all. */
  readonly bound: number;
}

/** Ways to divide a row that are looked at. */
const MOST_PATTERNS = 80;
/** Part layouts kept from row to row; more where these led nowhere. */
const KEPT = [8, 100] as const;
/** Placings tried for one packing. */
const PACKING_STEPS = 60;

/** Looks for the best layout over all ways to divide the room into rows. */
export function searchLayout(problem: PlacementProblem): Found {
  const runs = new Map<string, Run[]>();
  const candidates = rowLayouts(problem).map((layout) => {
    const rows = layout.bands.map((band): PlacedRow => {
      const key = problem.parallel && problem.openings.length === 0 ? `${band.width}` : `${band.low} ${band.high}`;
      const known = runs.get(key) ?? runsOf(problem, band);
      runs.set(key, known);
      return { band, runs: known };
    });
    return candidate(problem, layout, rows);
  });
  candidates.sort((a, b) => a.promise - b.promise || a.rows.length - b.rows.length);
  let best: Laid | undefined;
  for (const { layout, rows, bound, promise } of candidates) {
    if (bound === Infinity || (best !== undefined && promise > promised(problem, best.measures))) break;
    for (const laid of layoutsOn(problem, layout, rows, KEPT[0])) {
      if (best === undefined || isBetter(inOrder(laid.measures, problem.prefer), inOrder(best.measures, problem.prefer)))
        best = laid;
    }
  }
  for (const { layout, rows, bound } of best === undefined ? candidates : []) {
    if (bound === Infinity) break;
    best = layoutsOn(problem, layout, rows, KEPT[1]).next().value ?? undefined;
    if (best !== undefined) break;
  }
  return { laid: best, bound: candidates.reduce((least, { bound }) => Math.min(least, bound), Infinity) };
}

interface Candidate {
  readonly layout: RowLayout;
  readonly rows: readonly PlacedRow[];
  readonly bound: number;
  /** No layout on these rows is better than this by the sum that the preference looks at; small is good. */
  readonly promise: number;
}

function candidate(problem: PlacementProblem, layout: RowLayout, rows: readonly PlacedRow[]): Candidate {
  const boards = boardBound(problem, rows);
  const joints = sum(rows.flatMap(({ runs }) => runs.map((run) => (fewestFrom(run)[0] ?? Infinity) - 1)));
  const narrowRows = rows.filter(({ band }) => band.width < problem.rules.preferredRowWidth).length;
  return { layout, rows, bound: boards, promise: promised(problem, { boards, joints, narrowRows }) };
}

/** What rows can be cut short by: the first sums of the preference that rows alone say something about. */
function promised(
  problem: PlacementProblem,
  { boards, joints, narrowRows }: Pick<Measures, 'boards' | 'joints' | 'narrowRows'>,
): number {
  if (onlyBoardsMatter(problem)) return boards;
  if (problem.prefer === 'tradesperson') return narrowRows * 1e4 + 2 * boards + joints;
  return problem.prefer === 'joints' ? joints : 0;
}

const onlyBoardsMatter = ({ prefer }: PlacementProblem): boolean => prefer === 'boards' || prefer === 'certainty';

interface Part {
  readonly patterns: readonly RowPattern[];
  readonly weight: number;
  readonly pieces: number;
}

/** Good layouts on these rows: row after row, the best part layouts are kept by several measures. */
function* layoutsOn(
  problem: PlacementProblem,
  layout: RowLayout,
  rows: readonly PlacedRow[],
  kept: number,
): Generator<Laid, undefined> {
  const patterns = new Map<readonly Run[], RowPattern[]>();
  for (const { runs } of rows) if (!patterns.has(runs)) patterns.set(runs, rowPatterns(runs, MOST_PATTERNS));
  const longest = problem.stocks[0].length;
  let most = Infinity;
  for (const weigh of WEIGHINGS) {
    let parts: Part[] = [{ patterns: [], weight: 0, pieces: 0 }];
    for (const row of rows) {
      const weight = (pattern: RowPattern): number =>
        row.band.width * sum(piecesOf(row, pattern).map(({ nominal }) => weigh(nominal, longest)));
      parts = extended(problem, parts, patterns.get(row.runs) as RowPattern[], weight).slice(0, kept);
    }
    for (const part of parts) {
      const wanted = wantedPieces(rows, part.patterns);
      const boards = fewestBoards(problem, wanted, Math.min(most, wanted.length));
      if (boards === undefined) continue;
      most = Math.min(most, boards.length + (onlyBoardsMatter(problem) ? 0 : 4));
      const unmeasured = { layout, rows, patterns: part.patterns, wanted, boards };
      yield { ...unmeasured, measures: measure(problem, unmeasured) };
    }
  }
}

/** What a piece counts for: few pieces first; those over half a board as a whole one; length alone. */
const WEIGHINGS: readonly ((length: number, board: number) => number)[] = [
  (length, board) => board + length,
  (length, board) => (2 * length > board ? board : length),
  (length) => length,
];

/** Every part layout with one more row, the best of them. */
function extended(
  problem: PlacementProblem,
  parts: readonly Part[],
  patterns: readonly RowPattern[],
  weight: (pattern: RowPattern) => number,
): Part[] {
  const weights = patterns.map(weight);
  const next: Part[] = [];
  for (const part of parts) {
    const below = part.patterns[part.patterns.length - 1];
    for (const [at, pattern] of patterns.entries()) {
      if (below !== undefined && !breaksJoints(problem, below, pattern)) continue;
      next.push({
        patterns: [...part.patterns, pattern],
        weight: part.weight + weights[at],
        pieces: part.pieces + sum(pattern.pieces.map((run) => run.length)),
      });
    }
  }
  return next.sort((a, b) => a.weight - b.weight || a.pieces - b.pieces);
}

/** The fewest boards that a bounded search finds, at most `most`. */
function fewestBoards(problem: PlacementProblem, wanted: readonly WantedPiece[], most: number): PackedBoard[] | undefined {
  const largest = Math.max(...problem.stocks.map((stock) => stock.area));
  const least = Math.ceil(sum(wanted.map(({ piece, width }) => (piece.cut / 1e3) * (width / 1e3))) / largest - 1e-6);
  // A piece takes a step, so that there are steps to spare for changing one's mind.
  const steps = 2 * wanted.length + PACKING_STEPS;
  let best = packBoards(problem, wanted, most, steps);
  while (best !== undefined && best.length > Math.max(1, least)) {
    const fewer = packBoards(problem, wanted, best.length - 1, steps);
    if (fewer === undefined) break;
    best = fewer;
  }
  return best;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, each) => total + each, 0);

const piecesOf = ({ runs }: PlacedRow, pattern: RowPattern) =>
  pattern.pieces.flatMap((pieces, run) => pieces.map((index) => runs[run].pieces[index]));

/** Whether every butt joint of one row is far enough from those of the next, and on another joist. */
function breaksJoints({ rules }: PlacementProblem, below: RowPattern, above: RowPattern): boolean {
  return above.joints.every((here, at) =>
    below.joints.every((there, k) => Math.abs(here - there) >= rules.stagger && above.joists[at] !== below.joists[k]),
  );
}

function wantedPieces(rows: readonly PlacedRow[], patterns: readonly RowPattern[]): WantedPiece[] {
  return rows.flatMap((placed, row) =>
    placed.runs.flatMap((run, at) =>
      patterns[row].pieces[at].map((index) => {
        const piece = run.pieces[index];
        return { piece, width: placed.band.width, row, lowJoint: piece.from > 0, highJoint: piece.to < run.places.length - 1 };
      }),
    ),
  );
}
