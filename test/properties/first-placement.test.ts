import { tryPlaceBoards } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import recorded from '../derived/first-placement.json' with { type: 'json' };
import { roomToLay } from '../generators/rooms.js';

/** A number that changes with the text: sums and shifts of 32 bits. */
const fingerprint = (text: string): number => {
  let sum = 0;
  for (let at = 0; at < text.length; at++) sum = (Math.imul(sum, 31) + text.charCodeAt(at)) | 0;
  return sum;
};

/** Every third stands for all, for the sake of time. */
const EVERY = 3;

describe('rooms that the first placement laid', { timeout: 120_000 }, () => {
  it('are still the rooms that were recorded', () => {
    expect(fingerprint(JSON.stringify(recorded.rooms.map(({ seed }) => roomToLay(seed))))).toBe(1669625387);
  });

  it('are never laid with more boards', () => {
    const worse: string[] = [];
    for (const { seed, boards } of recorded.rooms.filter(({ feasible }, index) => feasible && index % EVERY === 0)) {
      const attempt = tryPlaceBoards({ ...roomToLay(seed), prefer: 'boards' });
      const now = attempt.ok ? attempt.value.boardsBought : Infinity;
      if (now > (boards as number)) worse.push(`room ${seed}: ${now} boards, ${boards} at first`);
    }
    expect(worse).toEqual([]);
  });
});
