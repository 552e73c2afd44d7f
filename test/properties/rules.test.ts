import { fc, test } from '@fast-check/vitest';
import { type Conditions, type Overrides, type RuleKey, type RuleRow, ruleSets, ruleTable, withRules } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { RULE_KEYS } from '../../src/rules/ruleSet.js';
import { greatestOf, lookUp } from '../../src/rules/ruleValue.js';

const runs = (numRuns: number) => ({ seed: 20_261_125, numRuns });
const sets = Object.values(ruleSets);
const anySet = fc.constantFrom(...sets);
const anyKey = fc.constantFrom(...RULE_KEYS);

/** Lengths to a hundredth of a mm. */
const length = (min: number, max: number) => fc.integer({ min: min * 100, max: max * 100 }).map((each) => each / 100);

const anyConditions: fc.Arbitrary<Conditions> = fc.record(
  {
    fixing: fc.constantFrom('screw', 'nail'),
    shank: fc.constantFrom('smooth', 'ringed'),
    boardThickness: length(6, 25),
    centres: length(200, 900),
    orientation: fc.constantFrom('across', 'along'),
    noggings: fc.boolean(),
    layer: fc.integer({ min: 1, max: 3 }),
    adhesive: fc.boolean(),
    fireRating: fc.constantFrom(0, 30, 45, 60, 90),
    finish: fc.constantFrom('painted', 'textured'),
    board: fc.constantFrom('standard', 'sag-resistant'),
    diaphragm: fc.boolean(),
  },
  { requiredKeys: [] },
);

describe.each(sets.map((set) => [set.id, set] as const))('%s', (_, set) => {
  it('has every key, with what it governs, unit, sense and level, and a source with its standing in each row', () => {
    expect(Object.keys(set.rules)).toEqual([...RULE_KEYS]);
    for (const key of RULE_KEYS) {
      const { title, unit, sense, level } = set.rules[key];
      expect(title.length, key).toBeGreaterThan(3);
      expect(['mm', 'kg', 'joists'], key).toContain(unit);
      expect(['at least', 'at most', 'nominal'], key).toContain(sense);
      expect(['must', 'should'], key).toContain(level);
      if (key.toLowerCase().includes('preferred')) expect(level, key).toBe('should');
      const rows = ruleTable(set, key);
      expect(rows.length, key).toBeGreaterThan(0);
      for (const { value, source } of rows) {
        expect(value === null || (Number.isFinite(value) && value >= 0), key).toBe(true);
        expect(source.standard.length, key).toBeGreaterThan(0);
        expect(['read', 'secondary', 'practice', 'memory', 'derived'], key).toContain(source.standing);
      }
    }
  });

  it('has what is preferred no laxer than what must hold', () => {
    const value = (key: RuleKey): number => lookUp(set, key, { fixing: 'screw' })?.value as number;
    expect(value('stagger.preferred')).toBeGreaterThanOrEqual(value('stagger.minimum'));
    expect(value('piece.preferredLength')).toBeGreaterThanOrEqual(value('piece.minimumLength'));
    expect(value('row.preferredWidth')).toBeGreaterThanOrEqual(value('row.minimumWidth'));
    expect(value('fixing.maximumEmbedment')).toBeGreaterThan(value('fixing.embedment'));
  });

  it('says of itself what it is', () => {
    expect(set.title.length).toBeGreaterThan(10);
    expect(set.notes?.length).toBeGreaterThan(0);
  });
});

describe('a value', () => {
  test.prop([anySet, anyKey, anyConditions], runs(2000))('comes from one of the rows, source and all', (set, key, given) => {
    const found = lookUp(set, key, given);
    if (found === undefined) return;
    const rows: readonly RuleRow[] = set.rules[key].rows;
    expect(rows.some(({ value, source }) => value === found.value && source === found.source)).toBe(true);
  });

  test.prop([anySet, anyKey, anyConditions], runs(500))(
    'does not depend on the order in which conditions are given',
    (set, key, given) => {
      const turned = Object.fromEntries(Object.entries(given).reverse());
      expect(lookUp(set, key, turned)).toEqual(lookUp(set, key, given));
    },
  );

  test.prop([anySet, length(9, 25), length(0, 10)], runs(500))(
    'lets joists under thicker board be no closer',
    (set, thin, more) => {
      const most = (boardThickness: number): number => {
        const rule = lookUp(set, 'support.centres', { boardThickness, orientation: 'across', noggings: false });
        return rule === undefined ? 0 : greatestOf(rule);
      };
      expect(most(thin + more)).toBeGreaterThanOrEqual(most(thin));
    },
  );

  test.prop([anySet, fc.constantFrom(0, 30, 45, 60, 75, 90), fc.constantFrom('screw', 'nail')], runs(100))(
    'asks a rated ceiling for no less in the joist than an unrated one',
    (set, fireRating, fixing) => {
      const into = (rating: number): number => lookUp(set, 'fixing.embedment', { fixing, fireRating: rating })?.value ?? Infinity;
      expect(into(fireRating)).toBeGreaterThanOrEqual(into(0));
    },
  );

  test.prop([anySet, fc.constantFrom(12.5, 12.7), length(300, 700)], runs(150))(
    'is the same for a size in inches and its metric name',
    (set, boardThickness, centres) => {
      for (const key of RULE_KEYS) {
        const given = { fixing: 'nail', adhesive: true, orientation: 'across', noggings: false } as const;
        const [metric, inches] = [12.5, 12.7].map((thickness) =>
          lookUp(set, key, { ...given, centres, boardThickness: thickness }),
        );
        const own = lookUp(set, key, { ...given, centres, boardThickness });
        expect([metric, inches], key).toContainEqual(own);
        if (set.id === 'nbcCanada' || set.id === 'ircUs') expect(metric, key).toEqual(inches);
      }
    },
  );
});

describe('rules replaced', () => {
  const anyOverrides = fc.dictionary(anyKey, fc.integer({ min: 0, max: 1000 }), { maxKeys: 6 }) as fc.Arbitrary<Overrides>;

  test.prop([anySet, anyOverrides, anyConditions], runs(120))(
    'change what they name and nothing else',
    (set, overrides, given) => {
      const before = JSON.stringify(set);
      const changed = withRules(set, overrides);
      for (const key of RULE_KEYS) {
        const own = overrides[key];
        if (own === undefined) expect(changed.rules[key], key).toEqual(set.rules[key]);
        else expect(lookUp(changed, key, { ...given, fireRating: 0 })?.value, key).toBe(own);
        expect([changed.rules[key].level, changed.rules[key].sense]).toEqual([set.rules[key].level, set.rules[key].sense]);
      }
      expect(JSON.stringify(set)).toBe(before);
    },
  );
});
