import { ruleSets, withRules } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { isHeavy } from '../../src/boards/isHeavy.js';
import { placementRules } from '../../src/boards/placementRules.js';
import type { PossiblePiece } from '../../src/boards/possiblePieces.js';
import { stocksOf } from '../../src/boards/stocksOf.js';
import { stock } from '../generators/scenario.js';

/** Grid steps to the mm. */
const MM = 1000;

describe('a piece that the team cannot lift', () => {
  const limited = withRules(ruleSets.uk, { 'piece.maximumMass': 25 });
  const problem = {
    rules: placementRules(limited),
    stocks: stocksOf([stock(3000, 1200, { massPerArea: 8.4 }), stock(1800, 1200, { massPerArea: 12.4 })], limited),
  };
  const heavy = (length: number, width = 1200, by = problem): boolean => {
    const at = length * MM;
    const piece: PossiblePiece = { from: 0, to: 1, lowMeets: 'wall', highMeets: 'wall', nominal: at, cut: at, give: 0 };
    return isHeavy(by, piece, width * MM);
  };

  it('is one that is too heavy of the heaviest board that can give it', () => {
    // 1700 by 1200 is 25.3 kg of the short boards, 17.1 of the long ones.
    expect(heavy(1700)).toBe(true);
    expect(heavy(1600)).toBe(false);
    expect(heavy(1700, 1100)).toBe(false);
  });

  it('is not weighed by boards that cannot give it', () => {
    // 24.2 and 25.2 kg of the long boards, which alone can be 2400 or 2500.
    expect(heavy(2400)).toBe(false);
    expect(heavy(2500)).toBe(true);
  });

  it('is none where nobody has said what the team can lift', () => {
    expect(heavy(3000, 1200, { ...problem, rules: placementRules(ruleSets.uk) })).toBe(false);
  });
});
