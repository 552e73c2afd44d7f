import { expect, it } from 'vitest';
import { blockedBy } from '../../src/boards/jointConflicts.js';
import { leastByPairs } from '../../src/boards/leastByPairs.js';
import { lightestPair } from '../../src/boards/lightestPair.js';
import { pairedRows } from '../../src/boards/pairedRows.js';
import { placementProblem } from '../../src/boards/placementProblem.js';
import { haveCommon, leastBeyond, type RowPath, rowPath, waysWithin } from '../../src/boards/rowPath.js';
import { rowSets } from '../../src/boards/rowSets.js';
import { type RowSort, type RowSpace, rowSpace } from '../../src/boards/rowSpace.js';
import { Draw } from '../generators/rooms.js';
import { steppedRoom } from '../generators/steppedRooms.js';

const ROOMS = 60;
/** Ways to divide a row, and pairs of them, that are all looked at. */
const MOST_WAYS = 400;

/** All ways to divide a row; nothing where there are too many. */
function allWays(space: RowSpace, sort: RowSort): readonly RowPath[] | undefined {
  const nothing = new Float64Array(sort.graph.to.length);
  const { ways, all } = waysWithin(sort.graph, nothing, { blocked: undefined, most: Infinity, limit: MOST_WAYS });
  return all ? ways.map(({ arcs }) => rowPath(space, sort, arcs)) : undefined;
}

/** The least that two neighbouring rows come to with their joints apart, of all ways there are. */
function leastOfTwo(space: RowSpace, row: number, costs: readonly Float64Array[]): number | undefined {
  const [below, above] = [row, row + 1].map((at) => allWays(space, space.sorts[at] as RowSort));
  if (below === undefined || above === undefined) return undefined;
  const costOf = ({ sort, arcs }: RowPath): number =>
    arcs.reduce((sum, arc) => sum + ((costs[sort.group] as Float64Array)[arc] as number), 0);
  let least = Infinity;
  for (const lower of below) {
    const blocked = blockedBy(space.set.conflicts[row] ?? [], lower);
    for (const upper of above) if (!haveCommon(blocked, upper.bits)) least = Math.min(least, costOf(lower) + costOf(upper));
  }
  return least;
}

/** Divisions into rows of rooms of all shapes. */
function* divisions() {
  for (let seed = 0; seed < ROOMS; seed++) {
    const { shape, ...request } = steppedRoom(seed);
    const problem = placementProblem(request);
    for (const set of rowSets(problem).slice(0, 2)) {
      yield { of: `${shape} ${seed}`, space: rowSpace(problem, set, ['joints']), draw: new Draw(seed) };
    }
  }
}

it('two neighbouring rows of any shape come to no less than is told of them, which is more than each alone', () => {
  const seen = { asked: 0, met: 0, more: 0 };
  for (const { of, space, draw } of divisions()) {
    const costs = space.groups.map(({ sort }) => Float64Array.from(sort.graph.to, () => draw.between(0, 1000)));
    const costsOf = ({ group }: RowSort) => costs[group] as Float64Array;
    const alone = (sort: RowSort): number => leastBeyond(sort.graph, costsOf(sort))[0] as number;
    for (const [row, conflicts] of space.set.conflicts.entries()) {
      const [below, above] = [space.sorts[row] as RowSort, space.sorts[row + 1] as RowSort];
      const least = leastOfTwo(space, row, costs);
      if (least === undefined) continue;
      const told = lightestPair(below.graph, above.graph, conflicts, costsOf(below), costsOf(above))?.cost ?? Infinity;
      expect(told, of).toBeLessThanOrEqual(least);
      seen.asked++;
      if (told === least) seen.met++;
      if (told > alone(below) + alone(above)) seen.more++;
    }
  }
  expect(seen.asked).toBeGreaterThan(100);
  expect(seen.met / seen.asked).toBeGreaterThan(0.9);
  expect(seen.more).toBeGreaterThan(20);
});

it('rows taken two by two as one come to no less than each alone, and to no more than the best choice of pairs', () => {
  for (const { of, space } of divisions()) {
    const paired = pairedRows(space);
    if (paired === undefined) continue;
    const sumOf = (sorts: readonly RowSort[]): number =>
      sorts.reduce((sum, { graph, costs: [joints] }) => sum + (leastBeyond(graph, joints as Float64Array)[0] as number), 0);
    const best = leastByPairs(space, [...space.sorts.keys()], ({ costs: [joints] }) => joints as Float64Array);
    expect(sumOf(paired.sorts), of).toBeGreaterThanOrEqual(sumOf(space.sorts));
    expect(sumOf(paired.sorts), of).toBeLessThanOrEqual(best ?? 0);
  }
});
