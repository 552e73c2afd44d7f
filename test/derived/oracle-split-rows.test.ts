import { checkLayout } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { comparePlacement } from '../bench/placementComparison.js';
import { placementOracle } from '../bench/placementOracle.js';
import { placementWitness } from '../bench/placementWitness.js';
import { splitRoom } from '../generators/splitRooms.js';

const ROOMS = 25;

/** Of these there is a layout. */
const LEAST_LAID = 20;

/** Seconds for one model; they take a fraction of one. */
const LIMIT = 20;

const rooms = Array.from({ length: ROOMS }, (_, seed) => ({ seed, ...splitRoom(seed) }));

describe('rooms with rows that a breast or an opening parts, beside the model', { timeout: 120_000 }, () => {
  it('have as many boards as the model, no bound above it, and no layout only where it has none', async () => {
    const ask = await placementOracle(LIMIT);
    const compared = rooms.map(({ seed, rowWidths, ...room }) => {
      const { ours, bound = 0, errors, fullRows } = comparePlacement(room, ask, rowWidths);
      return { seed, ours, bound, errors, outcome: fullRows?.outcome, optimum: fullRows?.optimum ?? 0 };
    });
    const differing = compared.filter(
      ({ bound, errors, outcome, optimum }) => outcome !== 'equal' || bound > optimum || errors.length > 0,
    );
    expect(differing).toEqual([]);
    expect(compared.filter(({ ours }) => ours !== undefined).length).toBeGreaterThanOrEqual(LEAST_LAID);
  });

  it('are laid by the model in a way that passes the check', async () => {
    const ask = await placementOracle(LIMIT);
    const wrong = rooms.slice(0, 12).flatMap(({ seed, rowWidths, ...room }) => {
      const { value, solution } = ask(room, { rowWidths, strips: 'cut' });
      if (solution === undefined) return [];
      const layout = placementWitness(room, rowWidths, solution);
      expect(layout.boards.length).toBe(value);
      const errors = checkLayout({ ...room, layout }).filter(({ severity }) => severity === 'error');
      return errors.map(({ message }) => `room ${seed}: ${message}`);
    });
    expect(wrong).toEqual([]);
  });

  it('are refused by the model where a piece would be notched', async () => {
    const ask = await placementOracle(LIMIT);
    const { rowWidths, ...room } = splitRoom(0);
    const [first, ...rest] = rowWidths;
    expect(() => ask(room, { rowWidths: [first - 50, ...rest, 50], strips: 'cut' })).toThrow('no plain rectangle');
  });
});
