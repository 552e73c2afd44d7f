import { boundBelow, boundInPairs, candidateOf, turnTo } from './candidate.js';
import { jointConflicts, wordsFor } from './jointConflicts.js';
import type { Steps } from './packKinds.js';
import type { PlacementProblem } from './placementProblem.js';
import type { PossiblePiece } from './possiblePieces.js';
import { isDivided, type RowGraph } from './rowGraph.js';
import type { RangedRow } from './rowRange.js';
import type { PlacedRow } from './rowSets.js';
import { type RowSpace, rowSpace } from './rowSpace.js';
import { searchRows } from './searchRows.js';

/** Whether a linear programme, or a search with some of the steps that are left, says that rows like these take so many boards. */
export function askedByProgram(
  problem: PlacementProblem,
  rows: readonly RangedRow[],
  boards: number,
  steps: Steps,
  most: number,
): boolean {
  const space = spaceOf(problem, rows);
  if (space === undefined) return false;
  const candidate = candidateOf(space);
  turnTo(candidate, 0);
  if (candidate.least >= boards) return true;
  const aim = { objective: 0, caps: [] };
  boundBelow(candidate, aim, boards - 1);
  steps.left -= candidate.root?.work ?? 0;
  if (candidate.least >= boards) return true;
  const allowed = { left: Math.min(most, steps.left) };
  if (candidate.root === undefined || allowed.left <= 0) return false;
  boundInPairs(candidate, aim, steps);
  if (candidate.least >= boards) return true;
  const before = allowed.left;
  const found = searchRows(space, { ...aim, most: boards - 1 }, candidate.root, allowed);
  steps.left -= before - allowed.left;
  return found === 'none';
}

function spaceOf(problem: PlacementProblem, rows: readonly RangedRow[]): RowSpace | undefined {
  const graphs = new Map<string, RowGraph>();
  const names = new Map<RangedRow['line'], number>();
  const placed = rows.flatMap(({ part, row, first, line, heights }): (PlacedRow & Pick<RangedRow, 'part' | 'row'>)[] => {
    const width = Math.max(...heights);
    names.set(line, names.get(line) ?? names.size);
    const key = `${names.get(line)} ${heights.join(' ')}`;
    const graph = graphs.get(key) ?? graphOf(line, heights);
    graphs.set(key, graph);
    // Where nothing of a row is asked for, it has no width by which others would go beside its pieces.
    return width > 0 && isDivided(graph) ? [{ part, row, band: { ...first, width }, runs: [], graph }] : [];
  });
  if (placed.length === 0) return undefined;
  const [{ band }] = placed;
  const none = new Int32Array(wordsFor(problem));
  const free = problem.joists.map(() => none);
  // Where joists are parallel, joints are as far apart in any two rows.
  const within = problem.parts.map(({ parallel }, part) =>
    parallel ? jointConflicts(problem, { ...band, part }, { ...band, part }) : free,
  );
  const conflicts = placed
    .slice(1)
    .map(({ part, row }, at) => (part === placed[at].part && row === placed[at].row + 1 ? within[part] : free));
  return rowSpace(problem, { layout: { gap: band.gap, bands: placed.map((row) => row.band) }, rows: placed, conflicts }, [
    'boards',
  ]);
}

function graphOf({ places, pieces }: RangedRow['line'], heights: readonly number[]): RowGraph {
  const starts = new Int32Array(places + 1);
  for (const { from } of pieces) starts[from + 1]++;
  for (let place = 0; place < places; place++) starts[place + 1] += starts[place];
  return {
    runs: [],
    nodes: places,
    starts,
    to: new Int32Array(pieces.map(({ to }) => to)),
    narrow: heights.length > 1,
    piece: pieces.map(({ cut, nominal, give, height }): PossiblePiece | undefined => {
      if (cut === undefined || heights[height] === 0) return undefined;
      return { from: 0, to: 0, lowMeets: 'board', highMeets: 'board', nominal, cut, give, width: heights[height] };
    }),
    joist: new Int32Array(pieces.map(({ joist }) => joist)),
    run: new Int32Array(pieces.length),
    index: new Int32Array(pieces.length),
  };
}
