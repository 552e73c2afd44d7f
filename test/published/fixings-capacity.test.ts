import { describe, expect, it } from 'vitest';
import { greatestReaction } from '../../src/rules/standards/beams.js';
import { nailPull } from '../../src/rules/standards/boardTests.js';
import { characteristicDensity } from '../../src/rules/standards/en338of2016.js';
import {
  declaredWithdrawal,
  diameterFactor,
  effectiveNumber,
  headPullThrough,
  leastThread,
  materialFactor,
  penetrationFactor,
  permanentFactor,
  permanentLoadFactor,
  screwInRange,
  screwWithdrawal,
  smoothNailWithdrawal,
  withdrawalStrength,
} from '../../src/rules/standards/en1995of2008.js';
import { nailWithdrawal, woodScrewWithdrawal } from '../../src/rules/standards/nds2018.js';
import { nailUltimate, screwUltimate } from '../../src/rules/standards/woodHandbook.js';
import { checkPublished } from './publishedTable.js';

const INCH = 25.4;

// S1: a hand calculation template to Eurocode 5 and its tests: d 6, d1 4, l_ef 55, rho_k 350, head 12 at 10.5 N/mm2.
const TEMPLATE = 'hand calculation template to EN 1995-1-1, worked screw';
checkPublished(
  'S1: a screw in range',
  [
    {
      id: 'en-1995-1-1-8.39 strength, N/mm2',
      inputs: () => withdrawalStrength(6, 55, 350),
      expected: 15.42,
      tolerance: 0.005,
      source: TEMPLATE,
      how: 'secondary',
    },
    {
      id: 'en-1995-1-1-8.40 k_d',
      inputs: () => diameterFactor(6),
      expected: 0.75,
      tolerance: 0,
      source: TEMPLATE,
      how: 'secondary',
    },
    {
      id: 'en-1995-1-1-8.38 withdrawal, N',
      inputs: () => screwWithdrawal(6, 55, 350),
      expected: 3817,
      tolerance: 3.8,
      source: TEMPLATE,
      how: 'secondary',
    },
    {
      id: 'en-1995-1-1-8.40b head, N',
      inputs: () => headPullThrough(10.5, 12, 350, 350),
      expected: 1512,
      tolerance: 1.5,
      source: TEMPLATE,
      how: 'secondary',
    },
    {
      id: 'en-1995-1-1-8.41 ten screws',
      inputs: () => effectiveNumber(10),
      expected: 7.943,
      tolerance: 0.001,
      source: TEMPLATE,
      how: 'secondary',
    },
    {
      id: 'en-1995-1-1-8.41 two screws',
      inputs: () => effectiveNumber(2),
      expected: 1.866,
      tolerance: 0.001,
      source: 'notebook of withdrawal to EN 1995-1-1',
      how: 'read',
    },
    {
      id: 'en-1995-1-1-8.7.2-3 least thread of 6 mm',
      inputs: () => leastThread(6),
      expected: 36,
      tolerance: 0,
      source: TEMPLATE,
      how: 'secondary',
    },
    {
      id: 'en-1995-1-1-8.24 S2: smooth nail 3.4, 52 into rho_k 350, N',
      inputs: () => smoothNailWithdrawal(3.4, 52, 350),
      expected: 433.2,
      tolerance: 0.43,
      source: 'hand calculation template to EN 1995-1-1, worked nail',
      how: 'secondary',
    },
  ],
  (compute) => compute(),
);

describe('en-1995-1-1-8.7.2-4, as restated in the template (secondary): 6 to 12 mm, inner over outer diameter 0.6 to 0.75', () => {
  it.each([
    [6, 4, true],
    [12, 7.2, true],
    [5, 3.2, false],
    [3.5, 2.2, false],
    [4.8, 3, false],
    [13, 8, false],
    [8, 4, false],
    [8, 6.5, false],
    [8, undefined, false],
  ])('d %f, d1 %f: %s', (d, d1, expected) => {
    expect(screwInRange(d, d1)).toBe(expected);
  });
});

// Withdrawal of smooth nails over the whole of 12 d, N for each mm: a published list of values to EN 1995-1-1 8.25.
const NAILS: [number, number, number][] = [
  [2.65, 5.09, 6.49],
  [2.8, 5.38, 6.86],
  [3, 5.77, 7.35],
  [3.1, 5.96, 7.6],
  [3.35, 6.44, 8.21],
  [3.75, 7.21, 9.19],
  [4, 7.69, 9.8],
];
checkPublished(
  'smooth nails in C16 and C24',
  NAILS.flatMap(([d, c16, c24]) =>
    (
      [
        ['C16', c16],
        ['C24', c24],
      ] as const
    ).map(([grade, expected]) => ({
      id: `en-1995-1-1-8.25 ${d} mm in ${grade}`,
      inputs: { d, grade },
      expected,
      tolerance: 0.005,
      source: 'published list of nail withdrawal to EN 1995-1-1 8.25, by EN 338 density (en-338-2016-density)',
      how: 'read' as const,
    })),
  ),
  ({ d, grade }) => smoothNailWithdrawal(d, 20 * d, characteristicDensity(grade)) / (20 * d),
);

describe('EN 1995-1-1, as restated in hand calculations and textbooks (secondary)', () => {
  it('en-1995-1-1-8.3.2-7: short nails lose their hold', () => {
    expect(penetrationFactor(2.65, 8 * 2.65 - 0.1, 'smooth')).toBe(0);
    expect(penetrationFactor(2.5, 25, 'smooth')).toBe(0.5);
    expect(penetrationFactor(2.5, 30, 'smooth')).toBe(1);
    expect(penetrationFactor(2.5, 14.9, 'ringed')).toBe(0);
    expect(penetrationFactor(2.5, 17.5, 'ringed')).toBe(0.5);
    expect(penetrationFactor(2.5, 20, 'ringed')).toBe(1);
  });

  it('en-1995-1-1-3.1 and en-1995-1-1-2.3: permanent load 0.6, 0.6 and 0.5 over 1.3; en-1990-6.10: 1.35', () => {
    expect([permanentFactor(1), permanentFactor(2), permanentFactor(3), materialFactor(), permanentLoadFactor()]).toEqual([
      0.6, 0.6, 0.5, 1.3, 1.35,
    ]);
  });

  it('en-1995-1-1-8.40a: declared strength scales with density to 0.8, and not with k_d', () => {
    expect(declaredWithdrawal(3.5, 30, 350, 12, 350)).toBe(12 * 3.5 * 30);
    expect(declaredWithdrawal(3.5, 30, 310, 12, 350) / (12 * 3.5 * 30)).toBeCloseTo((310 / 350) ** 0.8, 12);
  });
});

checkPublished(
  'American withdrawal',
  [
    {
      id: 'nds-2018-12.2.3 S4: nail 0.131 in, G 0.42, lb/in',
      inputs: () => nailWithdrawal(0.42, 0.131),
      expected: 20.67,
      tolerance: 0.02,
      source: 'American Wood Council, solved example E2.1a',
      how: 'secondary',
    },
    {
      id: 'nds-2018-12.2.3 S4: 2.5 in less 0.105 in, lb',
      inputs: () => nailWithdrawal(0.42, 0.131) * (2.5 - 0.105),
      expected: 49.5,
      tolerance: 0.05,
      source: 'American Wood Council, solved example E2.1a',
      how: 'secondary',
    },
    {
      id: 'nds-2018-12.2.2 S5: screw 0.190 in, G 0.45, lb/in; the page cuts 109.65 off',
      inputs: () => Math.floor(woodScrewWithdrawal(0.45, 0.19)),
      expected: 109,
      tolerance: 0,
      source: 'engineering page on wood screws, formula of the NDS',
      how: 'read',
    },
    {
      id: 'nds-2018-12.2.3: 20d nail 0.203 in, G 0.45, lb/in',
      inputs: () => nailWithdrawal(0.45, 0.203),
      expected: 38,
      tolerance: 0.1,
      source: 'engineering page on nails, formula of the NDS',
      how: 'read',
    },
    ...(
      [
        [20, 1.2, 40.4],
        [50, 2.2, 185],
        [60, 2.5, 252],
        [100, 4.2, 707],
      ] as const
    ).map(([length, d, expected]) => ({
      id: `nds-2018-12.2.3: ${length} x ${d} mm, G 0.5, N`,
      inputs: () => nailWithdrawal(0.5, d / INCH) * (length / INCH) * 4.4482216,
      expected,
      tolerance: 0.0015 * expected,
      source: 'engineering page on nails, metric table',
      how: 'read' as const,
    })),
    {
      id: 'wood-handbook-8-screws: No. 8 (0.164 in), G 0.70, 1 in, lb',
      inputs: () => screwUltimate(0.7, 0.164 * INCH, INCH) / 4.4482216,
      expected: 1262,
      tolerance: 1,
      source: 'page quoting 15,700 G^2 D',
      how: 'secondary',
    },
    {
      id: 'wood-handbook-8-nails: the metric constant is that of 7,850 in lb and inches',
      inputs: () => nailUltimate(1, INCH, INCH) / 4.4482216,
      expected: 7850,
      tolerance: 1,
      source: 'engineering page on nail pullout',
      how: 'secondary',
    },
  ],
  (compute) => compute(),
);

checkPublished(
  'continuous boards: continuous-beam-reactions',
  [
    { id: 'two bays', inputs: 2, expected: 1.25, tolerance: 0, source: 'reference table, beam on three supports', how: 'read' },
    {
      id: 'three bays',
      inputs: 3,
      expected: 1.1,
      tolerance: 0,
      source: 'reference table, three-span continuous beam',
      how: 'read',
    },
  ],
  (spans) => greatestReaction(spans),
);

describe('board', () => {
  it('astm-c36-nail-pull (secondary): 77 lbf for 1/2 in', () => {
    expect(Math.abs(nailPull.load - 77 * 4.4482216)).toBeLessThan(1);
  });
});
