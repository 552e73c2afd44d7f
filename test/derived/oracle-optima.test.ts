import { tryPlaceBoards } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { roomToLay } from '../generators/rooms.js';
import recorded from './oracle-optima.json' with { type: 'json' };

/** Half of them stand for all, for the sake of time. */
const EVERY = 2;

describe('rooms whose optimum in full rows is known', { timeout: 120_000 }, () => {
  it('are never laid with more boards where the answer is proven, and no bound passes the optimum', () => {
    const wrong: string[] = [];
    for (const { seed, boards } of recorded.rooms.filter((_, index) => index % EVERY === 1)) {
      const attempt = tryPlaceBoards({ ...roomToLay(seed), prefer: 'boards' });
      if (boards === null) continue;
      if (!attempt.ok) {
        wrong.push(`room ${seed}: no layout, ${boards} boards are enough`);
        continue;
      }
      const { boardsBought, bound, proven } = attempt.value;
      if (bound > boards || (proven && boardsBought > boards)) {
        wrong.push(`room ${seed}: ${boardsBought} boards, bound ${bound}, ${boards} are enough`);
      }
    }
    expect(wrong).toEqual([]);
  });
});
