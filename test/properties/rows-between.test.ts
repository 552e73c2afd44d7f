import { tryPlaceBoards } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { placementProblem } from '../../src/boards/placementProblem.js';
import { richestStretches } from '../../src/boards/richestStretches.js';
import { rowFamilies } from '../../src/boards/rowLayouts.js';
import { boardOf, Draw } from '../generators/rooms.js';
import { steppedRoom } from '../generators/steppedRooms.js';

/** Strips of 25 to 70 mm, each as wide over a few steps or a step wider or narrower with each of them. */
interface Strips {
  readonly widths: readonly number[];
  readonly slopes: readonly number[];
}

function someStrips(draw: Draw): Strips {
  const count = draw.between(2, 4);
  const of = <T>(one: () => T): T[] => Array.from({ length: count }, one);
  // In steps of 25 mm and a few grid steps, so that many sets just go on a board.
  return {
    widths: of(() => 25_100 + 12_500 * draw.between(0, 3) + draw.between(0, 60)),
    slopes: of(() => draw.from([-1, 0, 1])),
  };
}

const at = ({ widths, slopes }: Strips, step: number): number[] => widths.map((width, i) => width + step * slopes[i]);

/** Every set of strips that goes on a board side by side, and which strips are no wider than which, as words. */
function allCut(widths: readonly number[], board: number, kerf: number): Set<string> {
  const all = new Set<string>();
  const add = (from: number, used: number, taken: readonly number[]): void => {
    all.add(taken.join(' '));
    for (let i = from; i < widths.length; i++) {
      if (used + widths[i] + kerf <= board + kerf) add(i, used + widths[i] + kerf, [...taken, i]);
    }
  };
  add(0, 0, []);
  widths.forEach((one, i) => {
    widths.forEach((other, k) => {
      if (i !== k && one <= other) all.add(`${i} in ${k}`);
    });
  });
  return all;
}

describe('widths between which nothing new can be cut', () => {
  it('leave no set of strips out, of 400 by trying every step', () => {
    const stretches: number[] = [];
    for (let seed = 0; seed < 400; seed++) {
      const draw = new Draw(seed);
      const strips = someStrips(draw);
      const [board, kerf, far] = [draw.between(100_000, 120_000), draw.from([0, 0, 3]), draw.between(1, 90)];
      const [before, after] = [0, far].map((step) => [{ heights: at(strips, step) }]);
      const found = richestStretches({ stocks: [{ width: board, kerf }] }, before, after, far) ?? [];
      const cuts = Array.from({ length: far + 1 }, (_, step) => allCut(at(strips, step), board, kerf));
      const within = found.map(({ from, to }) => cuts.slice(from, to + 1));
      for (const [first, ...others] of within) for (const other of others) expect([...other], `${seed}`).toEqual([...first]);
      const left = cuts.filter((cut) => !within.some(([rich]) => [...cut].every((each) => rich.has(each))));
      expect(left, `seed ${seed}`).toEqual([]);
      stretches.push(found.length);
    }
    // In some there is more than one, and in none as many as there are steps.
    expect(Math.max(...stretches)).toBeGreaterThan(2);
  });
});

describe('rows of any width', () => {
  const ROOMS = 15;
  const TRIED = 8;

  it(`take no fewer boards than is proven of all, in ${ROOMS} rooms with ${TRIED} divisions each by chance`, () => {
    let laid = 0;
    for (let seed = 0; seed < ROOMS; seed++) {
      const { shape: _, ...request } = steppedRoom(seed);
      const free = tryPlaceBoards(request);
      if (!free.ok) continue;
      const draw = new Draw(seed);
      const ranges = rowFamilies(placementProblem(request), 0).filter(({ from, to }) => to > from);
      for (let tried = 0; tried < TRIED && ranges.length > 0; tried++) {
        const { from, to, bands } = draw.from(ranges);
        const rowWidths = bands(draw.between(from, to)).map(({ width }) => width / 1000);
        const pinned = tryPlaceBoards({ ...request, rowWidths, budget: 10_000 });
        if (!pinned.ok) continue;
        laid++;
        expect(pinned.value.boardsBought, `room ${seed}, rows ${rowWidths.join()}`).toBeGreaterThanOrEqual(free.value.bound);
      }
    }
    expect(laid).toBeGreaterThan(ROOMS);
  }, 120_000);
});

describe('a T-shaped room in 900 boards', () => {
  // 10 joists a little off 400; the stem is 1980 wide.
  const request = {
    room: {
      outline: [
        { x: 0, y: 0 },
        { x: 4125, y: 0 },
        { x: 4125, y: 3097 },
        { x: 2403, y: 3097 },
        { x: 2403, y: 4692 },
        { x: 423, y: 4692 },
        { x: 423, y: 3097 },
        { x: 0, y: 3097 },
      ],
    },
    joists: {
      direction: 'x' as const,
      positions: [390, 788, 1195, 1590, 1994, 2391, 2791, 3196, 3594, 3990, 4398],
      width: 47,
    },
    boards: [boardOf(1800, 900)],
  };

  it('takes a board fewer where the strip beside the stem and that at the wall go on one board', () => {
    const balanced = tryPlaceBoards({ ...request, rowWidths: [257.5, 900, 900, 900, 900, 257.5] });
    const free = tryPlaceBoards(request);
    if (!balanced.ok || !free.ok) throw new Error('both can be laid');
    expect(balanced.value).toMatchObject({ boardsBought: 12, proven: true });
    expect(free.value).toMatchObject({ boardsBought: 11, proven: true });
  });
});
