import { boundBelow, candidateOf, turnTo } from './candidate.js';
import { jointConflicts, wordsFor } from './jointConflicts.js';
import type { Line } from './lineAcross.js';
import type { PlacementProblem } from './placementProblem.js';
import type { PossiblePiece } from './possiblePieces.js';
import { isDivided, type RowGraph } from './rowGraph.js';
import type { RangedRow } from './rowRange.js';
import type { PlacedRow } from './rowSets.js';
import { type RowSpace, rowSpace } from './rowSpace.js';
import { searchRows } from './searchRows.js';

const STEPS = 3_000;

/**
 * Whether a linear programme, or a short search, says that rows like these take so many boards. Each row is held for no more than one
 * stretch of it, the one with most in it: its pieces are no longer and no wider than those of any row it stands for.
 */
export function askedByProgram(
  problem: PlacementProblem,
  rows: readonly RangedRow[],
  boards: number,
  graphs: Map<Line, RowGraph>,
): boolean {
  const space = spaceOf(problem, rows, graphs);
  if (space === undefined) return false;
  const candidate = candidateOf(space);
  turnTo(candidate, 0);
  if (candidate.least >= boards) return true;
  const aim = { objective: 0, caps: [] };
  boundBelow(candidate, aim, boards - 1);
  if (candidate.least >= boards) return true;
  if (candidate.root === undefined) return false;
  return searchRows(space, { ...aim, most: boards - 1 }, candidate.root, { left: STEPS }) === 'none';
}

function spaceOf(problem: PlacementProblem, rows: readonly RangedRow[], graphs: Map<Line, RowGraph>): RowSpace | undefined {
  const placed = rows.flatMap(({ part, first, held }): (PlacedRow & { part: number })[] => {
    const worthOf = ({ stretch, height }: (typeof held)[number]): number => height * stretch.worth[0];
    const most = held.reduce((a, b) => (worthOf(b) > worthOf(a) ? b : a), held[0]);
    if (most === undefined) return [];
    const graph = graphs.get(most.stretch.line) ?? graphOf(problem, most.stretch.line);
    graphs.set(most.stretch.line, graph);
    return isDivided(graph) ? [{ part, band: { ...first, width: most.height }, runs: [], graph }] : [];
  });
  if (placed.length === 0) return undefined;
  const [{ band }] = placed;
  const none = new Int32Array(wordsFor(problem));
  const free = problem.joists.map(() => none);
  // Where joists are parallel, joints are as far apart in any two rows.
  const within = problem.parts.map(({ parallel }, part) =>
    parallel ? jointConflicts(problem, { ...band, part }, { ...band, part }) : free,
  );
  const isNext = (row: number): boolean => placed[row].part === placed[row - 1].part;
  const conflicts = placed.slice(1).map(({ part }, at) => (isNext(at + 1) ? within[part] : free));
  return rowSpace(problem, { layout: { gap: band.gap, bands: placed.map((row) => row.band) }, rows: placed, conflicts }, [
    'boards',
  ]);
}

function graphOf({ rules }: PlacementProblem, { places, pieces }: Line): RowGraph {
  const starts = new Int32Array(places + 1);
  for (const { from } of pieces) starts[from + 1]++;
  for (let place = 0; place < places; place++) starts[place + 1] += starts[place];
  const pieceOf = (cut: number): PossiblePiece => {
    return { from: 0, to: 0, lowMeets: 'board', highMeets: 'board', nominal: cut, cut, give: rules.greatestExcess };
  };
  return {
    runs: [],
    nodes: places,
    starts,
    to: Int32Array.from(pieces, ({ to }) => to),
    narrow: false,
    piece: pieces.map(({ cut }) => (cut === undefined ? undefined : pieceOf(cut))),
    joist: Int32Array.from(pieces, ({ joist }) => joist),
    run: new Int32Array(pieces.length),
    index: new Int32Array(pieces.length),
  };
}
