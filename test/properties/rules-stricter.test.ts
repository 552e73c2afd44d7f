import fc from 'fast-check';
import {
  checkFixings,
  type Overrides,
  placeFixings,
  type RuleKey,
  type RuleSet,
  ruleSets,
  ruleValue,
  withRules,
} from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { anyHandLaidRows } from '../generators/handLaidRows.js';

/** What screws are checked by: how far apart, and how far from edges. */
const RANGES: readonly (readonly [RuleKey, min: number, max: number])[] = [
  ['fixing.field', 120, 320],
  ['fixing.boardEnd', 100, 320],
  ['fixing.perimeter', 100, 320],
  ['fixing.boundEdgeDistance', 5, 12],
  ['fixing.cutEdgeDistance', 8, 14],
  ['fixing.timberEdgeDistance', 2, 6],
  ['fixing.floatingEdgeDistance', 15, 40],
];
const KEYS = RANGES.map(([key]) => key);

const anyRules = fc.tuple(...RANGES.map(([, min, max]) => fc.integer({ min, max })));
/** By how much each value is made laxer. */
const anyLaxity = fc.tuple(...RANGES.map(([, min, max]) => fc.integer({ min: 0, max: Math.ceil((max - min) / 3) })));
/** One value that is made stricter, by as much. */
const anyTightening = fc.record({ which: fc.nat(RANGES.length - 1), by: fc.integer({ min: 0, max: 12 }) });

const isMost = (key: RuleKey): boolean => ruleSets.uk.rules[key].sense === 'at most';
const asSet = (values: readonly number[]): RuleSet =>
  withRules(ruleSets.uk, Object.fromEntries(KEYS.map((key, i) => [key, values[i]])) as Overrides);
const laxer = (values: readonly number[], by: readonly number[]): number[] =>
  values.map((value, i) => (isMost(KEYS[i]) ? value + by[i] : Math.max(1, value - by[i])));

/** Whether no value of one set asks for more than the other's, under the same conditions. */
function nowhereStricter(set: RuleSet, than: RuleSet): boolean {
  return KEYS.every((key) => {
    const [own, other] = [set, than].map(
      (each) => ruleValue(each, key, { fixing: 'screw', boardThickness: 12.5 }).value as number,
    );
    return isMost(key) ? own >= other : own <= other;
  });
}

type Laid = typeof anyHandLaidRows extends fc.Arbitrary<infer T> ? T : never;

/** The layout as a check wants it: each piece from a board. */
const withBoards = ({ room, joists, layout }: Laid) => ({
  room,
  joists,
  layout: {
    pieces: layout.pieces.map(({ id, outline, edges, ends, board }) => ({ id, outline, edges, ends, board })),
    boards: layout.pieces.map(({ board }) => ({ id: board, stock: 'any' })),
  },
});

const passes = (check: Omit<Parameters<typeof checkFixings>[0], 'rules'>, rules: RuleSet): boolean =>
  checkFixings({ ...check, rules }).every(({ severity }) => severity === 'note');

describe('screws that pass under a rule set', () => {
  it('pass under every set that is nowhere stricter: random rules, some screws taken out', { timeout: 60_000 }, () => {
    const cases = fc.sample(
      fc.tuple(anyHandLaidRows, anyRules, anyTightening, anyLaxity, fc.integer({ min: 0, max: 9 }), fc.nat()),
      {
        seed: 20_261_125,
        numRuns: 120,
      },
    );
    let [passed, failed, decided] = [0, 0, 0];
    for (const [laid, placedBy, tightening, laxity, thinned, which] of cases) {
      const { positions } = placeFixings({ ...laid, rules: asSet(placedBy) });
      const fixings = thinned < 2 ? positions.filter((_, i) => i !== which % positions.length) : positions;
      const strict = laxer(
        placedBy,
        placedBy.map((_, i) => (i === tightening.which ? -tightening.by : 0)),
      );
      const lax = laxer(strict, laxity);
      const check = { ...withBoards(laid), fixings };
      const [under, underLaxer] = [passes(check, asSet(strict)), passes(check, asSet(lax))];
      expect(nowhereStricter(asSet(lax), asSet(strict))).toBe(true);
      if (under) passed++;
      else failed++;
      if (!under && underLaxer) decided++;
      if (under) expect(underLaxer, JSON.stringify({ strict, lax })).toBe(true);
    }
    expect(passed).toBeGreaterThan(35);
    expect(failed).toBeGreaterThan(20);
    expect(decided).toBeGreaterThan(5);
  });

  it('pass under every set of the library that is nowhere stricter', { timeout: 60_000 }, () => {
    const sets = Object.values(ruleSets);
    const pairs = sets.flatMap((strict) =>
      sets.filter((lax) => lax !== strict && nowhereStricter(lax, strict)).map((lax) => [strict, lax] as const),
    );
    expect(pairs.map(([strict, lax]) => `${strict.id} > ${lax.id}`)).toEqual(
      expect.arrayContaining(['uk > nbcCanada', 'uk > ircUs', 'uk > ukOverSoundLining']),
    );
    let passed = 0;
    for (const laid of fc.sample(anyHandLaidRows, { seed: 20_261_125, numRuns: 12 })) {
      for (const [strict, lax] of pairs) {
        const fixings = placeFixings({ ...laid, rules: strict }).positions;
        if (!passes({ ...withBoards(laid), fixings }, strict)) continue;
        passed++;
        expect(passes({ ...withBoards(laid), fixings }, lax), `${strict.id} > ${lax.id}`).toBe(true);
      }
    }
    expect(passed).toBeGreaterThan(12);
  });

  it('need not pass under one that is stricter anywhere', () => {
    const [laid] = fc.sample(anyHandLaidRows, { seed: 20_261_125, numRuns: 1 });
    const { positions: fixings } = placeFixings({ ...laid, rules: ruleSets.nbcCanada });
    expect(nowhereStricter(ruleSets.uk, ruleSets.nbcCanada)).toBe(false);
    expect(passes({ ...withBoards(laid), fixings }, ruleSets.nbcCanada)).toBe(true);
    expect(passes({ ...withBoards(laid), fixings }, ruleSets.uk)).toBe(false);
  });
});
