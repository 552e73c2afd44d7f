import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import {
  bearing,
  type Conditions,
  fixingCapacity,
  isInputError,
  type RuleKey,
  type RuleSet,
  ruleSets,
  ruleTable,
  ruleValue,
} from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { nailPull } from '../../src/rules/standards/boardTests.js';
import { breakingLoad } from '../../src/rules/standards/en520of2009.js';
import { declaredWithdrawal, effectiveNumber, screwInRange, withdrawalStrength } from '../../src/rules/standards/en1995of2008.js';
import { flexuralStrength } from '../../src/rules/standards/gypsumAssociation.js';
import { nailWithdrawal } from '../../src/rules/standards/nds2018.js';
import { localAuthorityLimits, warrantyLimits } from '../../src/rules/standards/notchesAndHoles.js';
import { nailUltimate, nailUltimateOvenDry } from '../../src/rules/standards/woodHandbook.js';

// Misprints, slips and contradictions found in published material, and that none of them is repeated here. Those of span tables,
// loads, lifting and vibration belong to functions that there are none of.

const INCH = 25.4;
const { uk, ukOverSoundLining, nbcCanada, ircUs, asNzs, din } = ruleSets;

/** The value, or `null` where no row serves. */
function figure(set: RuleSet, key: RuleKey, given: Conditions = {}): number | null {
  try {
    return ruleValue(set, key, given).value;
  } catch (error) {
    if (isInputError(error)) return null;
    throw error;
  }
}
const across = (boardThickness: number, noggings = false) => ({ boardThickness, orientation: 'across', noggings }) as const;

describe('EN 1995-1-1 in notebooks', () => {
  it('one prints the exponent of density in 8.39 as 0.08: it is 0.8, and strength follows density', () => {
    const [at350, at420] = [withdrawalStrength(6, 55, 350), withdrawalStrength(6, 55, 420)];
    expect(at420 / at350).toBeCloseTo(1.2 ** 0.8, 9);
    expect(at420 / at350).toBeGreaterThan(1.1);
  });

  it('8.39 is applied to screws of 5 mm: the clause is for 6 to 12, and nothing under it has a capacity', () => {
    for (const diameter of [3.5, 3.9, 4.2, 4.8, 5, 5.9]) {
      expect(screwInRange(diameter, 0.65 * diameter)).toBe(false);
      const { capacity, ok, findings, fallback } = fixingCapacity({
        fixing: { diameter, innerDiameter: 0.65 * diameter, embedment: 40 },
        timber: { grade: 'C24' },
        hungMassPerArea: 10,
        joistSpacing: 400,
        fixingSpacing: 230,
      });
      expect([capacity, ok]).toEqual([0, false]);
      expect(findings.map(({ code }) => code)).toContain('capacity-unruled');
      expect(fallback?.label).toContain('no rule for this fixing');
    }
  });

  it('one ends in 32.7 kN, which its inputs do not give: two screws of two times 8036 N are 29.99', () => {
    const oneSide = declaredWithdrawal(9, 100, 385, 11.7, 350) * Math.SQRT1_2;
    const both = (2 * effectiveNumber(2) * oneSide) / 1000;
    expect(both).toBeCloseTo(29.99, 2);
    expect(both).toBeLessThan(32.7);
  });
});

describe('nails and their constants', () => {
  it('one page prints the exponent of specific gravity as 2: it is 5/2', () => {
    for (const withdrawal of [nailWithdrawal, (g: number, d: number) => nailUltimate(g, d, 1), nailUltimateOvenDry]) {
      expect(withdrawal(0.64, 1) / withdrawal(0.36, 1)).toBeCloseTo((0.64 / 0.36) ** 2.5, 9);
    }
  });

  it('7,850 goes with gravity at 12 % moisture, 6,900 with oven-dry wood, whose fifth is the allowable 1,380', () => {
    expect(nailUltimateOvenDry(0.5, 0.1) / nailWithdrawal(0.5, 0.1)).toBeCloseTo(5, 9);
    const at12 = nailUltimate(0.5, INCH, INCH) / 4.4482216;
    expect(at12 / nailUltimateOvenDry(0.5, 1)).toBeCloseTo(7850 / 6900, 3);
  });

  it('a page has an 8d nail of 2 1/2 in hold 81.7 lb, as if 0.134 in thick and all of it in the wood; 0.131 gives 79.9', () => {
    expect(nailWithdrawal(0.5, 0.131) * 2.5).toBeCloseTo(79.9, 1);
    expect(nailWithdrawal(0.5, 0.134) * 2.5).toBeCloseTo(81.7, 1);
  });
});

describe('boards', () => {
  it('a table prints 600 N for type R of 15 mm across: 24 x 15 is 360', () => {
    expect(breakingLoad('R', 15, 'across')).toBe(24 * 15);
    expect(breakingLoad('R', 12.5, 'across')).toBe(24 * 12.5);
  });

  it('the table of EN 520 has precedence over its formula for other thicknesses', () => {
    for (const [thickness, table, formula] of [
      [9.5, 400, 408.5],
      [12.5, 550, 537.5],
      [15, 650, 645],
    ] as const) {
      expect(breakingLoad('common', thickness, 'along')).toBe(table);
      expect(43 * thickness).toBe(formula);
    }
    expect(breakingLoad('common', 18, 'along')).toBe(43 * 18);
  });

  it('77 and 56 lbf are pull-through of a nail, and stand in a table of bending too: each is taken from its own', () => {
    expect(nailPull.load / 4.4482216).toBeCloseTo(77, 0);
    expect(flexuralStrength('3/8', 'across', 'B')).toBe(77);
    expect(flexuralStrength('1/2', 'across', 'B')).not.toBe(77);
  });

  it('a metric column of stiffness is 1.29 times its imperial one: no stiffness is taken from it', () => {
    const guide = readFileSync(fileURLToPath(new URL('../../src/rules/standards/gypsumAssociation.ts', import.meta.url)), 'utf8');
    for (const figure of ['220', '580', '440', '1160', '1500', '4000', '3000', '8000']) {
      expect(guide).not.toMatch(new RegExp(`\\b${figure}\\b`));
    }
  });
});

describe('sources that contradict each other: joists', () => {
  it('notches of 0.125 and of 0.15 of the depth: both are kept, and the smaller one governs up to 250', () => {
    for (const depth of [97, 147, 195, 220, 250]) {
      expect(localAuthorityLimits(depth).notchDepth).toBeLessThan(warrantyLimits(depth)?.notchDepth ?? 0);
    }
  });

  it('9.5 mm board at 450: allowed with noggings by the warranty table, plainly allowed by a textbook, and the table is followed', () => {
    expect(figure(uk, 'support.centres', across(9.5))).toBe(400);
    expect(figure(uk, 'support.centres', across(9.5, true))).toBe(450);
    const practice = ruleValue(ukOverSoundLining, 'support.centres', across(9.5));
    expect([practice.value, practice.source.standing]).toEqual([450, 'practice']);
  });

  it('9.5 mm board only to 350, as a trade page has it: not taken over', () => {
    expect(figure(uk, 'support.centres', across(9.5))).not.toBe(350);
  });

  it('perimeter noggings of 15 mm board may be waived, of no other', () => {
    const waivable = ruleTable(uk, 'support.centres').filter(({ note }) => note?.includes('waive'));
    expect(waivable.map(({ when }) => when?.boardThickness)).toEqual([15]);
  });

  it('a joist of 38 carries two cut ends only with a tight butt: 3 of gap wants 41', () => {
    const joist = { id: 'J', start: { x: 0, y: 0 }, end: { x: 0, y: 900 }, sd: 0, presence: 1, known: 'given' } as const;
    const tolerance = (width: number, jointGap: number) => bearing({ joist: { ...joist, width }, at: 0, jointGap }).tolerance;
    expect([tolerance(38, 0), tolerance(38, 3), tolerance(41, 3)]).toEqual([0, -1.5, 0]);
  });

  it('a checklist has 16 in for 1/2 and 24 in for 5/8, and drops the direction: along the joists 400 for both, across 600 for both', () => {
    for (const boardThickness of [12.7, 15.9]) {
      expect(figure(nbcCanada, 'support.centres', { boardThickness, orientation: 'along' })).toBe(400);
      expect(figure(nbcCanada, 'support.centres', { boardThickness, orientation: 'across' })).toBe(600);
    }
  });
});

describe('sources that contradict each other: screws and nails', () => {
  it('spacing is by country: 230 in the UK, 170 in Germany, 300 in Canada, 12 in in the United States; none takes the UK wall spacing', () => {
    expect([uk, din, nbcCanada, ircUs].map((set) => figure(set, 'fixing.field'))).toEqual([230, 170, 300, 304.8]);
  });

  it('5/8 in is 15.9 mm and is printed as 15 in Canada: each set keeps its own', () => {
    expect(figure(ircUs, 'fixing.embedment')).toBe((5 / 8) * INCH);
    expect(figure(nbcCanada, 'fixing.embedment')).toBe(15);
  });

  it('nails: 20 in Canada, 3/4 in ringed and 1 in smooth in the United States', () => {
    expect(figure(nbcCanada, 'fixing.embedment', { fixing: 'nail' })).toBe(20);
    expect(figure(ircUs, 'fixing.embedment', { fixing: 'nail', shank: 'ringed' })).toBe(19.05);
    expect(figure(ircUs, 'fixing.embedment', { fixing: 'nail', shank: 'smooth' })).toBe(INCH);
  });

  it('the 15 mm of an unrated ceiling is never given for a rated one', () => {
    for (const fireRating of [1, 30, 45, 60, 75, 90, 91, 120]) {
      const value = figure(nbcCanada, 'fixing.embedment', { fireRating });
      expect(value === null || value >= 30, `${fireRating}`).toBe(true);
    }
  });

  it('the cable rule is cited by the edition that was read, not by the number that the next one may have', () => {
    const { source } = ruleValue(uk, 'fixing.maximumEmbedment');
    expect([source.edition, source.clause]).toEqual(['2008', '522.6.5']);
  });

  it('the Canadian article is for one layer fixed to wood, and the set says that over-boarding lies outside it', () => {
    expect(nbcCanada.notes?.join(' ')).toContain('over-boarding lies outside');
  });
});

describe('sources that contradict each other: ceilings', () => {
  it('movement joints are by country: 50 ft with relief, 12 m in Australia, 10 m in the UK from memory', () => {
    expect(figure(ircUs, 'movementJoint.maximumRun')).toBe(50 * 12 * INCH);
    expect(figure(asNzs, 'movementJoint.maximumRun')).toBe(12_000);
    expect(ruleValue(uk, 'movementJoint.maximumRun')).toMatchObject({ value: 10_000, source: { standing: 'memory' } });
  });

  it('moisture of the timber: under 15 % in Australia, at most 18 in New Zealand, and the set says both', () => {
    const notes = asNzs.notes?.join(' ') ?? '';
    expect(notes).toContain('under 15 % in Australia');
    expect(notes).toContain('18 % at most in New Zealand');
  });

  it('spans and centres change with the edition, southern pine above all: the American set says so and names its edition', () => {
    expect(ircUs.notes?.join(' ')).toContain('southern pine after 2013');
    for (const { source } of ruleTable(ircUs, 'support.centres')) expect(source.edition).toBe('2018');
  });
});
