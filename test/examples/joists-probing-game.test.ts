import { describe, expect, it } from 'vitest';
import { type Played, play } from '../bench/probingRun.js';
import { probingGame } from '../generators/probingGames.js';

const games = Array.from({ length: 40 }, (_, i) => probingGame(7_000 + i));
const mean = (played: readonly Played[]): number => played.reduce((sum, { probes }) => sum + probes, 0) / played.length;

describe('the probing game', { timeout: 60_000 }, () => {
  const next = games.map((game) => play(game, 'next'));

  it('is won with few holes', () => {
    expect(mean(next)).toBeLessThanOrEqual(4.8);
  });

  it('is won', () => {
    expect(next.filter(({ right }) => right).length).toBeGreaterThanOrEqual(0.95 * games.length);
  });

  it('takes more holes where they are evenly spaced, or next to the joists that are known', () => {
    const few = games.slice(0, 8);
    expect(mean(few.map((game) => play(game, 'even')))).toBeGreaterThan(mean(next.slice(0, 8)));
    expect(mean(few.map((game) => play(game, 'nearest')))).toBeGreaterThan(mean(next.slice(0, 8)));
  });
});
