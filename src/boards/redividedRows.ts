import { type Aim, type Layout, valuesOf } from './candidate.js';
import { blockedBy } from './jointConflicts.js';
import { pricesOfArcs } from './pricesOfArcs.js';
import { cutInOrder } from './quickLook.js';
import { haveCommon, type RowPath } from './rowPath.js';
import type { RowSort, RowSpace } from './rowSpace.js';
import { cheapWays } from './spreadRows.js';
import type { UsualPrices } from './usualPrices.js';

/** Prices by which ways to divide a row are chosen, and in boards what one of the objective counts for beside them. */
const MOST_PRICES = 2;
const WEIGHTS = [0.3, 0.05];
/** Layouts that are cut, for one place and in all. */
const MOST_CUT_AT = 40;
const MOST_CUT = 600;

/** A way to divide a row, and what its pieces come to. */
interface Way {
  readonly path: RowPath;
  readonly price: number;
}

/** Some neighbouring rows divided anew. */
interface Change {
  readonly from: number;
  readonly paths: readonly RowPath[];
  readonly price: number;
}

/**
 * The layout, or one that comes to less by the objective within its caps: one row or two neighbouring ones are divided anew, the rest
 * being what it is, as long as that helps.
 */
export function redividedRows(layout: Layout, aim: Aim, prices: readonly UsualPrices[]): Layout {
  const { space } = layout;
  const ways = space.groups.map(({ sort }) => waysOf(space, sort, aim.objective, prices.slice(0, MOST_PRICES)));
  let left = MOST_CUT;
  let best = layout;
  let changed = true;
  while (changed && left > 0) {
    changed = false;
    for (let from = 0; from < space.sorts.length; from++) {
      const changes = [...changesOfOne(best, aim, ways, from), ...changesOfTwo(best, aim, ways, from)];
      for (const change of changes.slice(0, left)) {
        left--;
        const better = changedBy(best, aim, change);
        if (better === undefined) continue;
        best = better;
        changed = true;
        break;
      }
    }
  }
  return best;
}

function waysOf(space: RowSpace, sort: RowSort, objective: number, prices: readonly UsualPrices[]): Way[] {
  const found = new Map<string, Way>();
  for (const each of prices) {
    const whole = Math.max(...each.boards);
    const ofArc = pricesOfArcs(sort, each.kinds).map((price) => price / whole);
    for (const weight of WEIGHTS) {
      const costs = ofArc.map((price, arc) => price + weight * sort.costs[objective][arc]);
      for (const { path } of cheapWays(space, sort, costs)) {
        const price = path.arcs.reduce((sum, arc) => sum + ofArc[arc], 0);
        const key = path.arcs.join(' ');
        if (!found.has(key)) found.set(key, { path, price });
      }
    }
  }
  return [...found.values()];
}

const byPrice = (changes: Change[]): Change[] => changes.sort((a, b) => a.price - b.price).slice(0, MOST_CUT_AT);

function changesOfOne({ space, laid: { paths } }: Layout, { objective }: Aim, ways: readonly Way[][], row: number): Change[] {
  const most = paths[row].costs[objective];
  const may = mayLie(space, paths, row, row);
  return byPrice(
    ways[space.sorts[row].group]
      .filter(({ path }) => path.costs[objective] < most && may(path, 'below') && may(path, 'above'))
      .map(({ path, price }) => ({ from: row, paths: [path], price })),
  );
}

function changesOfTwo({ space, laid: { paths } }: Layout, { objective }: Aim, ways: readonly Way[][], row: number): Change[] {
  if (row + 1 === paths.length) return [];
  const most = paths[row].costs[objective] + paths[row + 1].costs[objective];
  const may = mayLie(space, paths, row, row + 1);
  const uppers = ways[space.sorts[row + 1].group].filter(({ path }) => path.costs[objective] < most && may(path, 'above'));
  const changes: Change[] = [];
  for (const lower of ways[space.sorts[row].group]) {
    if (lower.path.costs[objective] >= most || !may(lower.path, 'below')) continue;
    const blocked = blockedBy(space.set.conflicts[row], lower.path);
    for (const { path, price } of uppers) {
      if (lower.path.costs[objective] + path.costs[objective] >= most || haveCommon(path.bits, blocked)) continue;
      changes.push({ from: row, paths: [lower.path, path], price: lower.price + price });
    }
  }
  return byPrice(changes);
}

/** Whether a way keeps its joints apart from those of the row below the first, or above the last. */
function mayLie({ set }: RowSpace, paths: readonly RowPath[], first: number, last: number) {
  const blocked = first > 0 ? blockedBy(set.conflicts[first - 1], paths[first - 1]) : undefined;
  const above = last + 1 < paths.length ? paths[last + 1] : undefined;
  return ({ bits, joists }: RowPath, side: 'below' | 'above'): boolean =>
    side === 'below'
      ? blocked === undefined || !haveCommon(bits, blocked)
      : above === undefined || !joists.some((joist) => haveCommon(set.conflicts[last][joist], above.bits));
}

/** The layout with that change, where it can be cut from as many boards, keeps the caps and comes to less. */
function changedBy(
  { space, laid, values: before }: Layout,
  { objective, caps }: Aim,
  { from, paths: anew }: Change,
): Layout | undefined {
  const paths = [...laid.paths.slice(0, from), ...anew, ...laid.paths.slice(from + anew.length)];
  const cut = cutInOrder(space, paths, laid.packed.length);
  if (cut === undefined) return undefined;
  const values = valuesOf(space, cut);
  const isBetter = values[objective] < before[objective] && caps.every((cap) => values[cap.objective] <= cap.most);
  return isBetter ? { space, laid: cut, values } : undefined;
}
