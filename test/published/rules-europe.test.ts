import { ruleSets, ruleTable, ruleValue } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { screwLengths, threadLength } from '../../src/rules/standards/din18182of1987.js';
import { boardTolerances, breakingLoad } from '../../src/rules/standards/en520of2009.js';
import { fixingCentres } from '../../src/rules/standards/eu2006of673.js';
import { localAuthorityLimits, warrantyLimits } from '../../src/rules/standards/notchesAndHoles.js';
import { checkPublished, type PublishedRow } from './publishedTable.js';

type Load = Parameters<typeof breakingLoad>;
const load = (
  id: string,
  ...[type, thickness, direction, expected]: [...Load, number]
): PublishedRow<Load, number | undefined> => ({
  id,
  inputs: [type, thickness, direction],
  expected,
  tolerance: 0,
  source: 'EN 520:2004+A1:2009, least breaking loads as printed by a trade association, en-520-2009-breaking-load',
  how: 'secondary',
});

checkPublished(
  'breaking loads',
  [
    load('B1', 'common', 9.5, 'across', 160),
    load('B1', 'common', 9.5, 'along', 400),
    load('B2', 'common', 12.5, 'across', 210),
    load('B2', 'common', 12.5, 'along', 550),
    load('B3', 'common', 15, 'across', 250),
    load('B3', 'common', 15, 'along', 650),
    load('B4', 'common', 20, 'across', 16.8 * 20),
    load('B4', 'common', 20, 'along', 43 * 20),
    load('B5', 'R', 12.5, 'across', 300),
    load('B5', 'R', 12.5, 'along', 725),
    load('B6', 'R', 15, 'along', 870),
    load('B7', 'R', 20, 'across', 24 * 20),
    load('B7', 'R', 20, 'along', 58 * 20),
    load('B8', 'P', 9.5, 'across', 125),
    load('B8', 'P', 9.5, 'along', 180),
    load('B8', 'P', 12.5, 'across', 165),
    load('B8', 'P', 12.5, 'along', 235),
  ],
  (inputs) => breakingLoad(...inputs),
);

describe('EN 520', () => {
  it('en-520-2009-breaking-load: gives nothing for a plaster base board that its table does not have', () => {
    expect(breakingLoad('P', 15, 'along')).toBeUndefined();
  });

  it('en-520-2009-4.9 (secondary): thickness 0.5 below 18 mm, squareness 2.5 a metre, length 5 short', () => {
    expect(boardTolerances(12.5)).toMatchObject({ thickness: 0.5, outOfSquare: 2.5, shorter: 5 });
  });
});

checkPublished(
  'screw lengths',
  [
    {
      id: '25',
      inputs: 25,
      expected: [24, 26.1],
      tolerance: 0,
      source: 'DIN 18182-2:1987, din-18182-2-1987-length',
      how: 'read',
    },
    {
      id: '35',
      inputs: 35,
      expected: [33.8, 36.3],
      tolerance: 0,
      source: 'DIN 18182-2:1987, din-18182-2-1987-length',
      how: 'read',
    },
    {
      id: '45',
      inputs: 45,
      expected: [43.8, 46.3],
      tolerance: 0,
      source: 'DIN 18182-2:1987, din-18182-2-1987-length',
      how: 'read',
    },
    {
      id: '55',
      inputs: 55,
      expected: [53.5, 56.3],
      tolerance: 0,
      source: 'DIN 18182-2:1987, din-18182-2-1987-length',
      how: 'read',
    },
  ],
  (nominal) => screwLengths(nominal),
);

checkPublished(
  'screw threads',
  [
    { id: '25', inputs: 25, expected: 16, tolerance: 0, source: 'DIN 18182-2:1987, din-18182-2-1987-thread', how: 'secondary' },
    { id: '35', inputs: 35, expected: 26, tolerance: 0, source: 'DIN 18182-2:1987, din-18182-2-1987-thread', how: 'secondary' },
    { id: '45', inputs: 45, expected: 30, tolerance: 0, source: 'DIN 18182-2:1987, din-18182-2-1987-thread', how: 'secondary' },
  ],
  (nominal) => threadLength(nominal),
);

describe('notches and holes', () => {
  it('labc-notches-and-holes (read): 0.125 and 0.25 of the depth, at most 35 and 65', () => {
    expect(localAuthorityLimits(200)).toEqual({ notchDepth: 25, holeDiameter: 50, lowestHole: 75 });
    expect(localAuthorityLimits(300)).toMatchObject({ notchDepth: 35, holeDiameter: 65 });
  });

  it('nhbc-2020-6.4.18-table-6 (read): 0.15 and 0.25 of the depth, up to 250', () => {
    expect(warrantyLimits(200)).toMatchObject({ notchDepth: 30, holeDiameter: 50 });
    expect(warrantyLimits(251)).toBeUndefined();
  });
});

describe('Commission Decision 2006/673/EC, eu-2006-673 (secondary): fixings at most 300 apart along every support', () => {
  it('is kept by every European set, screws and nails', () => {
    expect(fixingCentres.rows[0].value).toBe(300);
    for (const set of [ruleSets.uk, ruleSets.ukOverSoundLining, ruleSets.din]) {
      for (const { value } of ruleTable(set, 'fixing.field')) expect(value).toBeLessThanOrEqual(300);
    }
  });
});

describe('the set for a sound old ceiling', () => {
  it('lets 9.5 mm go to 450 by common practice, and differs from the UK set in nothing else', () => {
    const asked = { boardThickness: 9.5, orientation: 'across', noggings: false } as const;
    expect(ruleValue(ruleSets.ukOverSoundLining, 'support.centres', asked)).toMatchObject({
      value: 450,
      source: { standing: 'practice' },
    });
    const { uk, ukOverSoundLining } = ruleSets;
    for (const key of Object.keys(uk.rules) as (keyof typeof uk.rules)[]) {
      if (key !== 'support.centres') expect(ukOverSoundLining.rules[key]).toEqual(uk.rules[key]);
    }
  });
});
