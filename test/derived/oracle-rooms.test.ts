import { readFileSync } from 'node:fs';
import { type BoardStock, checkLayout } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { comparePlacement } from '../bench/placementComparison.js';
import { placementOracle } from '../bench/placementOracle.js';
import { fullRows, type RoomToSolve } from '../bench/placementRows.js';
import { placementWitness } from '../bench/placementWitness.js';
import { boardOf, type RoomToLay, roomToLay } from '../generators/rooms.js';

interface ReferenceRoom extends Omit<RoomToSolve, 'boards'> {
  readonly id: string;
  readonly board: Pick<BoardStock, 'length' | 'width' | 'kerf'>;
  readonly rowWidths: readonly number[];
  readonly expected: { readonly boards?: number; readonly pieces?: number; readonly infeasible?: boolean };
}

const { rooms } = JSON.parse(readFileSync(new URL('reference-rooms.json', import.meta.url), 'utf8')) as {
  rooms: readonly ReferenceRoom[];
};

/** Known rooms that the solver is done with in little time. */
const KNOWN = ['R06', 'R19', 'R20', 'R22', 'R24', 'B024', 'B037', 'B042'];

/** Seeds of rooms that the solver is done with in little time; in some of them there is no layout. */
const SEEDS = [4, 17, 24, 26, 33, 36, 37, 38, 41, 43, 48, 50, 53, 54, 55, 58, 78, 84, 96, 101, 108, 135, 136, 140, 142];

/** Seconds for one model; they take a tenth of one. */
const LIMIT = 20;

describe('the model of a room', { timeout: 120_000 }, () => {
  it('has the optima that are known from elsewhere', async () => {
    const ask = await placementOracle(LIMIT);
    for (const id of KNOWN) {
      const { board, rowWidths, expected, ...room } = rooms.find((each) => each.id === id) as ReferenceRoom;
      const asked = { ...room, boards: [boardOf(board.length, board.width, board.kerf)] };
      const { status, value } = ask(asked, { rowWidths, strips: 'cut' });
      expect({ id, boards: value, infeasible: status === 'infeasible' }).toEqual({
        id,
        boards: expected.boards,
        infeasible: expected.infeasible === true,
      });
      if (value === undefined) continue;
      expect({ id, pieces: ask(asked, { rowWidths, strips: 'cut', mostBoards: value }).value }).toEqual({
        id,
        pieces: expected.pieces,
      });
      expect(ask(asked, { rowWidths, strips: 'bound', grain: 10 }).value, id).toBeLessThanOrEqual(value);
    }
  });
});

describe('a layout that the model describes', { timeout: 120_000 }, () => {
  it('passes the check of layouts, with as many boards as the model says, one ripped width or two', async () => {
    const ask = await placementOracle(LIMIT);
    const wrong: string[] = [];
    let two = 0;
    const asked = SEEDS.slice(0, 12).map((seed) => roomToLay(seed));
    for (const [room, rowWidths] of asked.flatMap((each) => rowsOf(each).map((rows) => [each, rows] as const))) {
      const { value, solution } = ask(room, { rowWidths, strips: 'cut' });
      if (solution === undefined) continue;
      const layout = placementWitness(room, rowWidths, solution);
      const errors = checkLayout({ ...room, layout }).filter(({ severity }) => severity === 'error');
      wrong.push(...errors.map(({ message }) => `${room.boards[0].id}, rows ${rowWidths.join()}: ${message}`));
      expect(layout.boards.length).toBe(value);
      if (new Set(rowWidths).size > 2) two++;
    }
    expect(wrong).toEqual([]);
    expect(two).toBeGreaterThan(3);
  });
});

/** Full rows with the last one ripped, and the same with the last two rows ripped so that they differ. */
function rowsOf(room: RoomToLay): number[][] {
  const full = fullRows(room);
  const [width] = room.boards.map((board) => board.width);
  const last = full?.[full.length - 1] ?? width;
  if (full === undefined || full.length < 2 || last === width) return full === undefined ? [] : [full];
  const pair = Math.round((width + last) * 10);
  const first = Math.round(pair * 0.37);
  return [full, [first / 10, ...full.slice(0, -2), (pair - first) / 10]];
}

describe('seeded rooms beside the model', { timeout: 120_000 }, () => {
  it('never have fewer boards than the optimum of their rows, nor a bound above it, nor more boards where they are proven', async () => {
    const ask = await placementOracle(LIMIT);
    const wrong: string[] = [];
    let equal = 0;
    for (const seed of SEEDS) {
      const { ours, bound = 0, proven, errors, ownRows, fullRows } = comparePlacement(roomToLay(seed), ask);
      const verdicts = [ownRows, fullRows].filter((each) => each !== undefined);
      const told = `room ${seed}: ${ours} boards, bound ${bound}, ${JSON.stringify(verdicts)}`;
      if (errors.length > 0) wrong.push(`${told}: ${errors.join('; ')}`);
      if (verdicts.some(({ outcome }) => outcome === 'impossible')) wrong.push(`${told}: fewer than the optimum`);
      if (verdicts.some(({ outcome, optimum, finished }) => finished && outcome !== 'between' && bound > optimum))
        wrong.push(`${told}: bound above the optimum`);
      const better = verdicts.some(({ outcome }) => outcome === 'better');
      if (better && (proven || ours === undefined)) wrong.push(`${told}: fewer boards are enough`);
      if (!better) equal++;
    }
    expect(wrong).toEqual([]);
    expect(equal).toBeGreaterThanOrEqual(LEAST_EQUAL);
  });
});

/** Rooms for which the solver has no layout with fewer boards. */
const LEAST_EQUAL = 20;
