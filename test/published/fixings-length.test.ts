import { fixingLength, ruleSets, ruleValue, withRules } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { checkPublished } from './publishedTable.js';

const INCH = 25.4;

checkPublished(
  'screws for over-boarding',
  [
    {
      id: 'textbook',
      inputs: { board: (3 / 8) * INCH, lining: 1 * INCH, into: (5 / 8) * INCH },
      // The sum of the three thicknesses is exactly the screw: neither may miss it by a rounding.
      expected: { minimum: 2 * INCH, recommended: 2 * INCH },
      tolerance: 0,
      source:
        'renovation textbook, drywall over plaster: 3/8 in board, 1 in of plaster and lath, 5/8 in into the joist, 2 in screw',
      how: 'read',
    },
  ],
  ({ board, lining, into }) => {
    const rules = withRules(ruleSets.uk, { 'fixing.embedment': into, 'fixing.preferredEmbedment': into });
    const stock = [1.25, 1.625, 2, 2.5, 3].map((inches) => inches * INCH);
    const { minimum, recommended } = fixingLength({ thicknesses: [board], lining: [lining], rules, stock });
    return { minimum, recommended };
  },
);

describe('the cable zone: BS 7671:2008 522.6.5, as quoted in an electrical industry pocket guide (secondary)', () => {
  it('keeps the point of every screw less than 50 mm into the joist', () => {
    const limit = ruleValue(ruleSets.uk, 'fixing.maximumEmbedment');
    expect(limit).toMatchObject({ sense: 'at most', level: 'must', source: { clause: '522.6.5', standing: 'secondary' } });
    expect(limit.value).toBeLessThan(50);
    for (const thickness of [9.5, 12.5, 15]) {
      for (const old of [0, 12.5, 28, 45.5, 60]) {
        const { recommended, maximum } = fixingLength({ thicknesses: [thickness], lining: [old] });
        expect(maximum - thickness - old).toBeLessThan(50);
        if (recommended !== null) expect(recommended - thickness - old).toBeLessThan(50);
      }
    }
  });
});
