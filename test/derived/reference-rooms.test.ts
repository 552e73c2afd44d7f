import { readFileSync } from 'node:fs';
import {
  type BoardLayout,
  joistsFromPositions,
  type Overrides,
  type PositionsRequest,
  ruleSets,
  tryPlaceBoards,
  withRules,
} from 'soffitwright';
import { describe, expect, it } from 'vitest';

interface ReferenceRoom extends Pick<PositionsRequest, 'room'> {
  readonly id: string;
  readonly joists: Omit<PositionsRequest, 'room'>;
  readonly board: { readonly length: number; readonly width: number; readonly kerf: number };
  readonly rules: Overrides;
  readonly rowWidths: readonly number[];
  readonly expected: { readonly boards?: number; readonly pieces?: number; readonly infeasible?: boolean };
}

// How the values were found stands in the file.
const { rooms } = JSON.parse(readFileSync(new URL('reference-rooms.json', import.meta.url), 'utf8')) as {
  rooms: readonly ReferenceRoom[];
};

function lay({ room, joists, board, rules, rowWidths }: ReferenceRoom, pinned: boolean): BoardLayout | undefined {
  const attempt = tryPlaceBoards({
    room,
    joists: joistsFromPositions({ room, ...joists }),
    boards: [{ id: 'b', edge: 'square', thickness: 12.5, massPerArea: 8.4, ...board }],
    rules: withRules(ruleSets.uk, rules),
    ...(pinned && { rowWidths }),
  });
  if (attempt.ok) return attempt.value;
  if (attempt.reason === 'input') throw new Error(attempt.problems.map(({ message }) => message).join('; '));
  return undefined;
}

const solved = rooms.filter(({ expected }) => expected.boards !== undefined);

describe('rooms whose fewest boards are known', { timeout: 120_000 }, () => {
  it('are enough to mean something', () => {
    expect(solved.length).toBeGreaterThanOrEqual(60);
  });

  it('are never laid with fewer boards, and no bound passes the fewest', () => {
    let [met, proven, pieces] = [0, 0, 0];
    for (const room of solved) {
      const fewest = room.expected.boards as number;
      const layout = lay(room, true);
      if (layout === undefined) throw new Error(`${room.id}: no layout`);
      expect(layout.bound, room.id).toBeLessThanOrEqual(fewest);
      expect(layout.boardsBought, room.id).toBeGreaterThanOrEqual(fewest);
      if (layout.boardsBought === fewest) met++;
      if (layout.proven) proven++;
      if (layout.pieces.length === room.expected.pieces) pieces++;
    }
    // The search ends after its steps, so that a room may be left over; what was reached shall not get worse.
    expect(met).toBeGreaterThanOrEqual(60);
    expect(proven).toBeGreaterThanOrEqual(60);
    expect(pieces).toBeGreaterThanOrEqual(59);
  });

  it('have a bound over all ways to choose the rows that is no higher', () => {
    for (const room of solved.filter((_, index) => index % 4 === 0)) {
      expect(lay(room, false)?.bound ?? 0, room.id).toBeLessThanOrEqual(room.expected.boards as number);
    }
  });

  it('are not laid where there is no layout', () => {
    for (const room of rooms.filter(({ expected }) => expected.infeasible)) expect(lay(room, true), room.id).toBeUndefined();
  });
});
