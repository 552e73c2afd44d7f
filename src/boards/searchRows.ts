import { cutRows, type Question } from './cutRows.js';
import { fixNext, goBack, standingOf } from './decisions.js';
import type { LaidRows } from './laidRows.js';
import { orderOfRows } from './orderOfRows.js';
import { areaOf, type Shares, type Steps } from './packKinds.js';
import { pathOf, relax } from './relax.js';
import type { Relaxation } from './relaxation.js';
import { cheapWaysWithin, countsOf } from './rowPath.js';
import type { RowSpace } from './rowSpace.js';
import { blockedAt, keptApart, moreBeside, openBeside } from './rowsBeside.js';
import { settledStrips, sortsWithStrips } from './settledStrips.js';
import { solve } from './solveRelaxation.js';
import { PARTS, type WholePrices } from './wholePrices.js';

interface Search {
  readonly space: RowSpace;
  readonly question: Question;
  relaxation: Relaxation;
  /** The order in which rows are fixed, and per row its place in it. */
  readonly order: readonly number[];
  readonly places: readonly number[];
  /** Sorts of rows that have pieces beside which something may go. */
  readonly withStrips: readonly number[];
  readonly steps: Steps;
  /** Rows and pieces below from which nothing came. */
  readonly dead: Set<string>;
  readonly shares: readonly Shares[];
  /** Pieces that could not be cut from what boards there were. */
  readonly uncut: Set<string>;
  /** How often a way that is not the likeliest may still be taken. */
  turns: number;
  sure: boolean;
}

/** Looks at the rows: how often one may turn from the likeliest way, and in what share of the steps. */
const LOOKS = [
  { turns: 1, share: 1 / 4 },
  { turns: 3, share: 1 / 4 },
  { turns: Infinity, share: 1 },
];

/** Work on one programme: a share of the steps that are left, within limits. */
const WORK = { least: 1500, most: 20_000, share: 1 / 16 };
/** Ways to divide a row that are compared. */
const MOST_WAYS = 400;
/** With more steps than that it is worth while to begin with both sides. */
const LONG = 40_000;
/** What a look at one node counts for, and a programme with the strips that are settled. */
const STEPS_OF_NODE = 20;
const STEPS_OF_SETTLING = 50;
/** Places visited on the search for ways that count for one step. */
const VISITS_OF_STEP = 10;

/**
 * Looks for rows row by row: a way to divide the next one is fixed, the programme tells what the rest can come to at best, and
 * only ways that may still lead to what is asked are tried, those that the programme uses first: at first with few turns from the
 * likeliest, at last with all. Pieces are held against `known` shares of boards too where they are packed.
 */
export function searchRows(
  space: RowSpace,
  question: Question,
  root: Relaxation,
  steps: Steps,
  known: readonly Shares[] = [],
): LaidRows | 'none' | 'unknown' {
  const withStrips = sortsWithStrips(space);
  const order = orderOfRows(space, withStrips, steps.left > LONG);
  const relaxation = relax(space, question.objective, question.caps, root);
  const search: Search = {
    space,
    question,
    relaxation,
    withStrips,
    order,
    places: order.map((_, row) => order.indexOf(row)),
    steps,
    dead: new Set(),
    shares: [areaOf(space.problem, space.kinds), ...known],
    uncut: new Set(),
    turns: Infinity,
    sure: true,
  };
  const given = steps.left;
  let found: LaidRows | undefined;
  for (const { turns, share } of LOOKS) {
    const kept = Math.max(0, steps.left - given * share);
    steps.left -= kept;
    search.turns = turns;
    search.sure = true;
    found = lay(search);
    steps.left += kept;
    if (found !== undefined || search.sure || steps.left <= 0) break;
  }
  if (found === undefined) return search.sure ? 'none' : 'unknown';
  return { ...found, paths: search.places.map((place) => found.paths[place]) };
}

function lay(search: Search): LaidRows | undefined {
  const { relaxation, steps, dead, order } = search;
  if (steps.left <= 0) {
    search.sure = false;
    return undefined;
  }
  steps.left -= STEPS_OF_NODE;
  const pieces = piecesOf(search);
  if (dead.has(pieces)) return undefined;
  const open = order.slice(relaxation.fixed.length);
  const here = `${pieces};${open.map((row) => blockedAt(search, row)?.join(' ') ?? '').join(';')}`;
  if (dead.has(here)) return undefined;
  // Where all rows are fixed, a look at how they might be cut comes first.
  search.relaxation = (open.length > 0 ? settled(search) : undefined) ?? relaxation;
  const wasSure = search.sure;
  search.sure = true;
  const found = layWithin(search, pieces);
  if (found === undefined && search.sure) dead.add(here);
  search.sure &&= wasSure;
  search.relaxation = relaxation;
  return found;
}

/** The rows that are fixed as far as the others care, but for their joints: how many, what they come to, and their pieces. */
function piecesOf({ space, question, relaxation: { fixed } }: Search): string {
  const costs = [question, ...question.caps].map(({ objective }) => fixed.reduce((sum, path) => sum + path.costs[objective], 0));
  return `${fixed.length};${costs.join(' ')};${countsOf(space.kinds.length, fixed).join(' ')}`;
}

/** The programme with all strips known one by one, as soon as the rows are fixed that have any. */
function settled({ space, question, relaxation, steps, withStrips }: Search): Relaxation | undefined {
  const { fixed, open } = relaxation;
  if (relaxation.strips !== undefined || withStrips.length === 0) return undefined;
  if (withStrips.some((group) => open[group] > 0)) return undefined;
  steps.left -= STEPS_OF_SETTLING;
  return relax(space, question.objective, question.caps, relaxation, settledStrips(space, fixed));
}

function layWithin(search: Search, pieces: string): LaidRows | undefined {
  const { question, relaxation, dead } = search;
  const prices = solved(search, relaxation);
  const slack = question.most * PARTS - prices.bound;
  // However the joints are.
  if (slack < 0) dead.add(pieces);
  return slack < 0 || keptApart(search, prices, []) > slack ? undefined : layNext(search, prices, slack);
}

/** The best that a programme says with a share of the steps. */
function solved({ question, steps }: Search, relaxation: Relaxation): WholePrices {
  const before = relaxation.work;
  const work = Math.min(WORK.most, Math.max(WORK.least, steps.left * WORK.share));
  const prices = solve(relaxation, work, question.most + 1e-3, 'best');
  steps.left -= relaxation.work - before;
  return prices;
}

function layNext(search: Search, prices: WholePrices, slack: number): LaidRows | undefined {
  const { space, relaxation, steps, order } = search;
  const row = order[relaxation.fixed.length];
  if (row === undefined) {
    return cutRows(search, relaxation.fixed, prices, () => {
      const own = settled(search);
      return own && solved(search, own);
    });
  }
  const sort = space.sorts[row];
  const { group } = sort;
  const { ways, all, visited } = cheapWaysWithin(sort.graph, prices.arcs[group], {
    blocked: blockedAt(search, row),
    most: prices.least[group] + slack - keptApart(search, prices, [row, openBeside(search, row)]),
    limit: MOST_WAYS,
    added: moreBeside(search, row, prices),
  });
  steps.left -= visited / VISITS_OF_STEP;
  search.sure &&= all;
  const used = usedBy(relaxation);
  const paths = ways
    .map(({ arcs, cost, added }) => ({ path: pathOf(relaxation, sort, arcs), cost: cost + added }))
    .sort((a, b) => (used.get(b.path) ?? 0) - (used.get(a.path) ?? 0) || a.cost - b.cost);
  const standing = standingOf(relaxation);
  for (const [at, { path }] of paths.entries()) {
    if (at === 1) search.turns--;
    if (steps.left <= 0 || search.turns < 0) {
      if (at > 0) search.turns++;
      search.sure = false;
      return undefined;
    }
    fixNext(relaxation, path);
    const found = lay(search);
    goBack(relaxation, standing);
    if (found !== undefined) return found;
  }
  if (paths.length > 1) search.turns++;
  return undefined;
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
