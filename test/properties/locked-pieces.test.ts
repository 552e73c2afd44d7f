import { fc, test } from '@fast-check/vitest';
import { type BoardLayout, checkLayout, type PlacementRequest, type Point, placeBoards } from 'soffitwright';
import { describe, expect } from 'vitest';
import { anyHappening } from '../generators/replannedJobs.js';
import { TURNS, type Turn, turnedJoist } from '../generators/turnedAbout.js';

const runs = { seed: 20_261_126, numRuns: 15 };

/** A room some of whose pieces are up, every third of them say, told by their outlines alone. */
const anyHalfLaid = fc
  .record({ happening: anyHappening, from: fc.integer({ min: 0, max: 2 }), every: fc.integer({ min: 2, max: 4 }) })
  .map(({ happening, from, every }): PlacementRequest | undefined => {
    if (happening === undefined) return happening;
    const { room, joists, job, layout } = happening.plan;
    const locked = layout.pieces.filter((_, i) => i % every === from).map(({ outline }) => ({ outline }));
    return { room, joists, boards: job.boards, rules: job.rules, locked };
  });

const turned = ({ room, joists, locked = [], ...rest }: PlacementRequest, turn: Turn): PlacementRequest => ({
  ...rest,
  room: { outline: room.outline.map(turn) },
  joists: Array.isArray(joists) ? joists.map((joist) => turnedJoist(joist, turn)) : joists,
  locked: locked.map(({ outline }) => ({ outline: outline.map(turn) })),
});

const worth = ({ boardsBought, bound, endJoints, cuts, wasteAreaM2, boardsAtMinimumLength, pieces }: BoardLayout) => ({
  boardsBought,
  bound,
  endJoints,
  cuts,
  wasteAreaM2,
  boardsAtMinimumLength,
  lengths: pieces.map(({ length, width }) => `${length} x ${width}`).sort(),
});

const cornersOf = (outline: readonly Point[]): string[] => outline.map(({ x, y }) => `${x} ${y}`).sort();

describe('a room some of whose pieces are up', { timeout: 240_000 }, () => {
  test.prop([anyHalfLaid], runs)('is filled round them, and the verifier finds nothing wrong', (request) => {
    if (request === undefined) return;
    const { room, joists, boards, rules, locked = [] } = request;
    const layout = placeBoards(request);
    const found = checkLayout({ room, joists, boards, rules, layout });
    expect(found.filter(({ severity }) => severity === 'error')).toEqual([]);
    const up = layout.pieces.filter((piece) => piece.locked === true).map(({ outline }) => cornersOf(outline));
    expect(up.sort()).toEqual(locked.map(({ outline }) => cornersOf(outline)).sort());
  });

  test.prop([anyHalfLaid, fc.constantFrom(...TURNS)], runs)(
    'takes as much whichever way it is turned or mirrored',
    (request, [, turn]) => {
      if (request === undefined) return;
      expect(worth(placeBoards(turned(request, turn)))).toEqual(worth(placeBoards(request)));
    },
  );

  test.prop([anyHalfLaid], runs)(
    'takes no fewer boards than the bound, and the order of what is up does not matter',
    (request) => {
      if (request === undefined) return;
      const { locked = [] } = request;
      const layout = placeBoards(request);
      expect(layout.bound).toBeLessThanOrEqual(layout.boardsBought);
      expect(worth(placeBoards({ ...request, locked: [...locked].reverse() }))).toEqual(worth(layout));
    },
  );
});
