import { ruleSets, ruleTable } from 'soffitwright';
import { describe, expect, it } from 'vitest';

/**
 * Least breaking loads, N, of boards of types A, D, E, F, H and I: EN 520, table as printed by a trade association (secondary).
 * The paper's grain runs along the board; a board laid across the joists bends along its length.
 */
const BREAKING_LOADS = [
  { thickness: 9.5, across: 160, along: 400 },
  { thickness: 12.5, across: 210, along: 550 },
  { thickness: 15, across: 250, along: 650 },
] as const;

describe('EN 520: a board is stronger along its length', () => {
  it.each(BREAKING_LOADS)('$thickness mm breaks at $along N along and $across N across', ({ across, along }) => {
    expect(along / across).toBeGreaterThan(2.4);
  });

  it('so the table of joist centres has rows for boards laid across the joists only', () => {
    for (const { when } of ruleTable(ruleSets.uk, 'support.centres')) expect(when?.orientation).toBe('across');
  });
});
