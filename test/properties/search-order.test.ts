import { expect, it } from 'vitest';
import { orderOfRows } from '../../src/boards/orderOfRows.js';
import { placementProblem } from '../../src/boards/placementProblem.js';
import { quickBound } from '../../src/boards/quickLook.js';
import { relax } from '../../src/boards/relax.js';
import { rowSets } from '../../src/boards/rowSets.js';
import { type RowSpace, rowSpace } from '../../src/boards/rowSpace.js';
import { searchRows } from '../../src/boards/searchRows.js';
import { sortsWithStrips } from '../../src/boards/settledStrips.js';
import { roomToLay } from '../generators/rooms.js';

/** Steps for which rows are fixed from one side on, and for which both ripped ones are fixed first. */
const SHORT = 40_000;
const LONG = 41_000;
const ROOMS = 120;
const MOST_KINDS = 60;

/** Divisions with a ripped row at each side and at least two others, on which a search begins with the two. */
function fromBothSides(seed: number): RowSpace[] {
  const problem = placementProblem({ ...roomToLay(seed), prefer: 'boards' });
  return rowSets(problem)
    .map((set) => rowSpace(problem, set, ['boards']))
    .filter((space) => {
      if (space.least.includes(Infinity) || space.sorts.length < 4 || space.kinds.length > MOST_KINDS) return false;
      const [, second] = orderOfRows(space, sortsWithStrips(space), true);
      return second === space.sorts.length - 1;
    });
}

const ask = (space: RowSpace, most: number, left: number) =>
  searchRows(space, { objective: 0, most, caps: [] }, relax(space, 0, []), { left });

it('rows can be laid or not, whichever of them are fixed first', () => {
  let asked = 0;
  let none = 0;
  for (let seed = 0; seed < ROOMS; seed++) {
    for (const space of fromBothSides(seed).slice(0, 1)) {
      const { boards } = quickBound(space);
      for (const most of [boards, boards + 1]) {
        const [short, long] = [ask(space, most, SHORT), ask(space, most, LONG)];
        if (short === 'unknown' || long === 'unknown') continue;
        asked++;
        if (short === 'none') none++;
        expect(long === 'none', `room ${seed}, at most ${most} boards`).toBe(short === 'none');
      }
    }
  }
  expect(asked).toBeGreaterThan(20);
  expect(none).toBeGreaterThan(0);
}, 120_000);
