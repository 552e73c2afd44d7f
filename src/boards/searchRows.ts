import { fixNext, goBack, standingOf } from './decisions.js';
import { blockedBy } from './jointConflicts.js';
import type { LaidRows } from './laidRows.js';
import { leastByPairs } from './leastByPairs.js';
import { isWithin, packByProgram } from './packByProgram.js';
import { packInOrder } from './packInOrder.js';
import { type BoardLimits, packKinds, type Shares, type Steps } from './packKinds.js';
import { pathOf, relax } from './relax.js';
import type { Cap, Relaxation } from './relaxation.js';
import { cheapWaysWithin, countsOf, haveCommon, isOpen, leastBeyond, lightestWay, type RowPath, rowPath } from './rowPath.js';
import type { RowSpace } from './rowSpace.js';
import { solve } from './solveRelaxation.js';
import { PARTS, type WholePrices } from './wholePrices.js';

/** What is asked: whether rows can be laid so that an objective comes to no more than `most`, with others within their caps. */
export interface Question {
  readonly objective: number;
  readonly most: number;
  readonly caps: readonly Cap[];
}

interface Search {
  readonly space: RowSpace;
  readonly question: Question;
  readonly relaxation: Relaxation;
  readonly steps: Steps;
  /** Rows and pieces below from which nothing came. */
  readonly dead: Set<string>;
  readonly shares: readonly Shares[];
  /** Pieces that could not be cut from what boards there were. */
  readonly uncut: Set<string>;
  sure: boolean;
}

/** Work on one programme; ways to divide a row that are compared; steps of one packing. */
const WORK = 20_000;
const MOST_WAYS = 400;
const STEPS_OF_PACKING = 8000;
/** What a look at one node, and at one packing, counts for. */
const STEPS_OF_NODE = 20;
const STEPS_OF_LOOK = 5;
/** Placings of a piece that count for one step. */
const PLACINGS = 3;

/**
 * Looks for rows row by row: a way to divide the next one is fixed, the programme tells what the rest can come to at best, and
 * only ways that may still lead to what is asked are tried, those that the programme uses first. Pieces are held against `known`
 * shares of boards too where they are packed.
 */
export function searchRows(
  asked: RowSpace,
  question: Question,
  root: Relaxation,
  steps: Steps,
  known: readonly Shares[] = [],
): LaidRows | 'none' | 'unknown' {
  const turned = question.caps.length === 0 ? fromTheOtherSide(asked) : undefined;
  const space = turned ?? asked;
  const relaxation = relax(space, question.objective, question.caps, root);
  const area = space.problem.stocks.map(({ length, width, kerf }) => (length + kerf) * (width + kerf));
  const search: Search = {
    space,
    question,
    relaxation,
    steps,
    dead: new Set(),
    shares: [{ kinds: Float64Array.from(space.kinds, ({ size, width }) => size * width), boards: area }, ...known],
    uncut: new Set(),
    sure: true,
  };
  const found = lay(search, undefined);
  if (found === undefined) return search.sure ? 'none' : 'unknown';
  return turned === undefined ? found : { ...found, paths: [...found.paths].reverse() };
}

/** The same rows from the other side, where that begins with a row of a rarer sort and makes no other difference. */
function fromTheOtherSide(space: RowSpace): RowSpace | undefined {
  const { sorts, groups, set, alike } = space;
  const last = sorts.length - 1;
  if (alike === undefined || groups[sorts[last].group].count >= groups[sorts[0].group].count) return undefined;
  const [conflicts] = set.conflicts;
  const clash = (one: number, other: number): boolean => !isOpen(conflicts[one], other);
  const isMutual = conflicts.every((_, one) => conflicts.every((_, other) => clash(one, other) === clash(other, one)));
  return isMutual ? { ...space, sorts: [...sorts].reverse() } : undefined;
}

function lay(search: Search, blocked: Int32Array | undefined): LaidRows | undefined {
  const { question, relaxation, steps, dead } = search;
  const row = relaxation.fixed.length;
  if (steps.left <= 0) {
    search.sure = false;
    return undefined;
  }
  steps.left -= STEPS_OF_NODE;
  const key =
    row === 0 ? '' : `${row};${blocked?.join(' ') ?? ''};${countsOf(search.space.kinds.length, relaxation.fixed).join(' ')}`;
  if (dead.has(key)) return undefined;
  const before = relaxation.work;
  const prices = solve(relaxation, WORK, question.most + 1e-3, 'best');
  steps.left -= relaxation.work - before;
  const slack = question.most * PARTS - prices.bound;
  if (keptApart(search, prices, 0) > slack) return undefined;
  if (slack < 0) return undefined;
  const wasSure = search.sure;
  search.sure = true;
  const found = layNext(search, blocked, prices, slack);
  if (found !== undefined) return found;
  if (search.sure) dead.add(key);
  search.sure &&= wasSure;
  return undefined;
}

function layNext(search: Search, blocked: Int32Array | undefined, prices: WholePrices, slack: number): LaidRows | undefined {
  const { space, relaxation, steps } = search;
  const row = relaxation.fixed.length;
  if (row === space.sorts.length) return cutFor(search, relaxation.fixed, prices);
  const sort = space.sorts[row];
  const { group } = sort;
  const { ways, all } = cheapWaysWithin(sort.graph, prices.arcs[group], {
    blocked,
    most: prices.least[group] + slack - keptApart(search, prices, 2),
    limit: MOST_WAYS,
    added: moreAbove(search, prices),
  });
  search.sure &&= all;
  const used = usedBy(relaxation);
  const paths = ways
    .map(({ arcs, cost, added }) => ({ path: pathOf(relaxation, sort, arcs), cost: cost + added }))
    .sort((a, b) => (used.get(b.path) ?? 0) - (used.get(a.path) ?? 0) || a.cost - b.cost);
  const standing = standingOf(relaxation);
  for (const { path } of paths) {
    if (steps.left <= 0) {
      search.sure = false;
      return undefined;
    }
    fixNext(relaxation, path);
    const found = lay(search, row + 1 < space.sorts.length ? blockedBy(space.set.conflicts[row], path) : undefined);
    goBack(relaxation, standing);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** How much more the rows that are open, but for the next few, come to when neighbouring ones are kept apart two by two. */
function keptApart({ space, relaxation }: Search, { arcs, least }: WholePrices, without: number): number {
  const open = space.sorts.slice(relaxation.fixed.length + without);
  const apart = leastByPairs(space, open, ({ group }) => arcs[group]);
  return apart === undefined ? 0 : Math.max(0, apart - open.reduce((sum, { group }) => sum + least[group], 0));
}

/** How much more the next row comes to above joints on these joists. */
function moreAbove(
  { space, relaxation }: Search,
  { arcs, least }: WholePrices,
): ((joists: readonly number[]) => number) | undefined {
  const row = relaxation.fixed.length;
  const next = space.sorts[row + 1];
  if (next === undefined) return undefined;
  const costs = arcs[next.group];
  const lightest = rowPath(space, next, lightestWay(next.graph, costs, undefined, leastBeyond(next.graph, costs)));
  return (joists) => {
    const blocked = blockedBy(space.set.conflicts[row], { joists, bits: lightest.bits });
    if (!haveCommon(lightest.bits, blocked)) return 0;
    return leastBeyond(next.graph, costs, blocked)[0] - least[next.group];
  };
}

/** How much the programme uses each path. */
function usedBy({ program }: Relaxation): Map<unknown, number> {
  const used = new Map<unknown, number>();
  for (let at = 0; at < program.size; at++) {
    const { path } = program.basis[at] as { path?: unknown };
    if (path !== undefined) used.set(path, (used.get(path) ?? 0) + program.values[at]);
  }
  return used;
}

/** Cuts the pieces of a full set of rows, if that can be done within what is asked. */
function cutFor(search: Search, paths: readonly RowPath[], prices: WholePrices): LaidRows | undefined {
  const { space, question, steps } = search;
  const { problem, objectives } = space;
  const all = [...question.caps, { objective: question.objective, most: question.most }];
  const limits: { of: readonly number[]; most: number }[] = [];
  for (const { objective, most } of all) {
    const left = paths.reduce((sum, path) => sum - path.costs[objective], most - objectives[objective].fixed);
    if (left < 0) return undefined;
    if (objectives[objective].boards.some((each) => each > 0)) limits.push({ of: objectives[objective].boards, most: left });
  }
  const counts = countsOf(space.kinds.length, paths);
  if (limits.length === 0) limits.push({ of: problem.stocks.map(() => 1), most: counts.reduce((sum, each) => sum + each, 0) });
  const given: BoardLimits = { caps: limits, available: problem.stocks.map(({ board }) => board.available ?? Infinity) };
  steps.left -= STEPS_OF_LOOK;
  const quick = packInOrder(problem.stocks, space.kinds, counts, fewestWithin(limits));
  if (quick !== undefined && isWithin(quick, given)) return { paths: [...paths], packed: quick };
  const guided = packByProgram(search.relaxation, counts, given, question.most, steps);
  if (guided !== undefined) return { paths: [...paths], packed: guided };
  const allowed = { left: Math.min(STEPS_OF_PACKING, Math.max(steps.left, 1) * PLACINGS) };
  const before = allowed.left;
  const packed = packKinds(problem.stocks, space.kinds, counts, given, [...search.shares, prices], allowed, search.uncut);
  steps.left -= (before - allowed.left) / PLACINGS;
  if (packed === 'unknown') search.sure = false;
  return typeof packed === 'string' ? undefined : { paths: [...paths], packed };
}

/** No more boards than this are within the limits. */
const fewestWithin = (limits: BoardLimits['caps']): number =>
  Math.min(...limits.map(({ of, most }) => (of.includes(0) ? Infinity : Math.floor(most / Math.min(...of)))));
