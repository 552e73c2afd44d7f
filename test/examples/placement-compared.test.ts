import { type BoardLayout, comparePlacements, isInfeasibleError, isInputError, placeBoards, rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { boardOf } from '../generators/rooms.js';

const ROOM = {
  room: { outline: rectangle(3560, 2930) },
  joists: { direction: 'y', first: 150, spacing: 400, last: 3350, width: 47 },
  boards: [boardOf(1800, 900)],
  rules: { 'perimeter.gap': 5, 'joint.gap': 3 },
} as const;

const boardsAndJoints = ({ boardsBought, endJoints }: BoardLayout) => ({ boardsBought, endJoints });

const measuresOf = ({ boardsBought, endJoints, cuts, findings }: BoardLayout): number[] => [
  boardsBought,
  endJoints,
  findings.filter(({ code }) => code === 'piece-below-preferred').length,
  cuts,
];

describe('layouts between which only their user can choose', { timeout: 60_000 }, () => {
  const layouts = comparePlacements(ROOM);

  it('are the one with fewest boards and the one that buys joints away with a board', () => {
    expect(layouts.map(boardsAndJoints)).toEqual([
      { boardsBought: 7, endJoints: 10 },
      { boardsBought: 8, endJoints: 8 },
    ]);
  });

  it('are none of them at least as good as another in everything', () => {
    for (const [at, layout] of layouts.entries()) {
      for (const other of layouts.filter((_, index) => index !== at)) {
        const theirs = measuresOf(other);
        expect(measuresOf(layout).some((each, k) => each < theirs[k])).toBe(true);
      }
    }
  });

  it('share one bound, which the fewest boards meet', () => {
    expect(layouts.map(({ bound, proven }) => ({ bound, proven }))).toEqual([
      { bound: 7, proven: true },
      { bound: 7, proven: false },
    ]);
  });

  it('are what the two orders of preference lead to', () => {
    expect(boardsAndJoints(placeBoards({ ...ROOM, prefer: 'boards' }))).toEqual(boardsAndJoints(layouts[0]));
    expect(boardsAndJoints(placeBoards({ ...ROOM, prefer: 'joints' }))).toEqual(boardsAndJoints(layouts[1]));
  });

  it('are refused where the input is wrong, and where there is no layout', () => {
    const thrownBy = (run: () => unknown): unknown => {
      try {
        return run();
      } catch (error) {
        return error;
      }
    };
    const wrong = thrownBy(() => comparePlacements({ ...ROOM, boards: [] }));
    expect(isInputError(wrong) && wrong.problems.map(({ code, path }) => `${code} ${path}`)).toEqual(['too-small boards']);
    const long = thrownBy(() => comparePlacements({ ...ROOM, rules: { 'piece.minimumLength': 1900 } }));
    expect(isInfeasibleError(long)).toBe(true);
  });
});
