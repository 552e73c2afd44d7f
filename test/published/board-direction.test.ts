import { ruleSets, ruleTable } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { breakingLoad } from '../../src/rules/standards/en520of2009.js';

/**
 * EN 520:2004+A1:2009, least breaking loads of boards of types A, D, E, F, H and I, as printed by a trade association (secondary).
 * The paper's grain runs along the board; a board laid across the joists bends along its length.
 */
describe('EN 520: a board is stronger along its length', () => {
  it.each([
    [9.5, 160, 400],
    [12.5, 210, 550],
    [15, 250, 650],
  ])('%f mm breaks at %i N across and at %i N along', (thickness, across, along) => {
    expect(breakingLoad('common', thickness, 'across')).toBe(across);
    expect(breakingLoad('common', thickness, 'along')).toBe(along);
  });

  it('so the table of joist centres has rows for boards laid across the joists only', () => {
    for (const { when } of ruleTable(ruleSets.uk, 'support.centres')) expect(when?.orientation).toBe('across');
  });
});
