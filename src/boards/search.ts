import type { CappedCost } from './chain.js';
import type { Laid } from './laid.js';
import { laidFrom } from './laidFrom.js';
import { type LayoutSpace, layoutSpace, type RowsBound, rowsBound } from './layoutSpace.js';
import { layRows } from './layRows.js';
import { learnForRows } from './learnForRows.js';
import { likelyRows } from './likelyRows.js';
import { inOrder, isBetter } from './measures.js';
import { type BoardLimits, capacityOf, type KindsOnBoard, packKinds, type Steps } from './packKinds.js';
import type { PlacementProblem } from './placementProblem.js';
import { rowSets } from './rowSets.js';
import { piecesKey } from './searchChain.js';
import { weighLengths } from './weighings.js';

/** Steps of a whole search, of one question within it, and of one packing. */
const STEPS = 40_000;
const STEPS_OF_QUESTION = 5_000;
const STEPS_OF_PACKING = 500;

/** A search for the best layout: what has been worked out so far, and how many steps are left. */
export interface Search {
  readonly problem: PlacementProblem;
  /** Ways to divide the room into rows, those that may need fewest boards first. */
  readonly candidates: readonly RowsBound[];
  readonly spaces: Map<RowsBound, LayoutSpace>;
  readonly packs: Map<string, readonly KindsOnBoard[] | 'none' | 'unknown'>;
  readonly steps: Steps;
}

/** Boards without a limit on any stock but what there is of it. */
export const anyBoards = ({ problem }: Search, boards: number): BoardLimits => ({
  boards,
  available: problem.stocks.map(({ board }) => board.available ?? Infinity),
});

export function startSearch(problem: PlacementProblem): Search {
  const sets = rowSets(problem);
  const weighed = weighLengths(problem, [...new Set(sets.flatMap(({ rows }) => rows.map(({ graph }) => graph)))]);
  const candidates = sets
    .map((set) => rowsBound(problem, set, weighed))
    .filter(({ bound }) => bound < Infinity)
    .sort((a, b) => a.bound - b.bound || a.joints - b.joints || a.rows.length - b.rows.length);
  return { problem, candidates, spaces: new Map(), packs: new Map(), steps: { left: problem.request.budget ?? STEPS } };
}

/** What is asked of a layout; no limit where nothing is given. */
export interface Question {
  readonly boards?: BoardLimits;
  readonly joints?: number;
  /** What the preference looks at before boards and butt joints, and after them. */
  readonly first?: number;
  readonly last?: number;
}

export type Answer = Laid | 'none' | 'unknown';

export const isLaid = (answer: Answer): answer is Laid => typeof answer !== 'string';

export function spaceOf({ problem, spaces }: Search, rows: RowsBound): LayoutSpace {
  const space = spaces.get(rows) ?? layoutSpace(problem, rows);
  spaces.set(rows, space);
  return space;
}

/** Whether there is a layout on these rows within what is asked; a layout that asks nothing of boards cuts them as it can. */
export function ask(search: Search, rows: RowsBound, question: Question, most = STEPS_OF_QUESTION): Answer {
  const { problem, steps } = search;
  const space = spaceOf(search, rows);
  const { boards } = question;
  const costs: CappedCost[] = [];
  const limit = (arcs: readonly Float64Array[], cap: number | undefined): void => {
    if (cap !== undefined) costs.push({ arcs, cap });
  };
  limit(space.costs.first, question.first);
  limit(space.costs.joints, question.joints ?? Number.MAX_SAFE_INTEGER);
  limit(space.costs.last, question.last ?? Number.MAX_SAFE_INTEGER);
  if (boards !== undefined) {
    for (const [k, arcs] of space.costs.weighings.entries()) limit(arcs, capacityOf(space.weighings[k].boards, boards));
  }
  const allowed = { left: Math.min(most, steps.left) };
  const before = allowed.left;
  const answer = layRows(
    space.toLay,
    costs,
    (counts) => pack(search, space, counts, boards ?? anyBoards(search, Number.MAX_SAFE_INTEGER), allowed),
    allowed,
    (chain) => {
      const learnt = boards && learnForRows(space, chain, boards.boards);
      return learnt && boards && { arcs: learnt.arcs, cap: capacityOf(learnt.boards, boards) };
    },
  );
  steps.left -= before - Math.max(0, allowed.left);
  return typeof answer === 'string' ? answer : laidFrom(problem, space, answer.patterns, answer.packed);
}

/** The layout with fewest boards, under `most`, of those that a quick look at these rows finds. */
export function quickLayout(search: Search, rows: RowsBound, most: number): Laid | undefined {
  const { problem } = search;
  const space = spaceOf(search, rows);
  const { toLay, costs } = space;
  const counts = new Int32Array(toLay.kindCount);
  let best: Laid | undefined;
  for (const patterns of likelyRows(toLay, costs.likely)) {
    counts.fill(0);
    for (const [row, { arcs }] of patterns.entries()) {
      for (const arc of arcs) if (toLay.kinds[row][arc] >= 0) counts[toLay.kinds[row][arc]]++;
    }
    while ((best?.boards.length ?? most) > rows.bound) {
      const limits = anyBoards(search, (best?.boards.length ?? most) - 1);
      const packed = pack(search, space, counts, limits, { left: STEPS_OF_QUICK_PACKING });
      if (typeof packed === 'string') break;
      best = laidFrom(problem, space, patterns, packed);
    }
  }
  return best;
}

const STEPS_OF_QUICK_PACKING = 500;

function pack(
  { problem, packs }: Search,
  { kinds, shares, layout }: LayoutSpace,
  counts: Int32Array,
  limits: BoardLimits,
  steps: Steps,
): readonly KindsOnBoard[] | 'none' | 'unknown' {
  const widths = layout.bands.map(({ width }) => width).join(' ');
  const key = `${layout.gap} ${widths} ${limits.boards} ${limits.available.join(' ')} ${piecesKey(counts)}`;
  const known = packs.get(key);
  if (known !== undefined) return known;
  const pieces = counts.reduce((sum, count) => sum + count, 0);
  const allowed = { left: Math.min(STEPS_OF_PACKING, Math.max(steps.left, pieces)) };
  const before = allowed.left;
  const packed = packKinds(
    problem.stocks,
    kinds,
    counts,
    { ...limits, boards: Math.min(limits.boards, pieces) },
    shares,
    allowed,
  );
  steps.left -= before - Math.max(0, allowed.left);
  if (packed !== 'unknown' || before === STEPS_OF_PACKING) packs.set(key, packed);
  return packed;
}

export function bestOf({ problem }: Search, found: readonly Laid[]): Laid | undefined {
  let best: Laid | undefined;
  for (const laid of found) {
    if (best === undefined || isBetter(inOrder(laid.measures, problem.prefer), inOrder(best.measures, problem.prefer)))
      best = laid;
  }
  return best;
}
