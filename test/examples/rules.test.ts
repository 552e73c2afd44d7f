import { isInputError, type Level, type RuleKey, ruleSets, ruleTable, ruleValue, type Sense, withRules } from 'soffitwright';
import { describe, expect, it } from 'vitest';

const { uk } = ruleSets;

/** The defaults of the UK set as they are documented; `null`: no limit unless one is given. */
const DEFAULTS: readonly (readonly [RuleKey, number | null, Sense, Level])[] = [
  ['stagger.minimum', 300, 'at least', 'must'],
  ['stagger.preferred', 600, 'at least', 'should'],
  ['piece.minimumLength', 300, 'at least', 'must'],
  ['piece.preferredLength', 600, 'at least', 'should'],
  ['piece.minimumSupports', 2, 'at least', 'must'],
  ['piece.supportLength', 250, 'at least', 'must'],
  ['piece.maximumMass', null, 'at most', 'must'],
  ['piece.minimumNeck', 300, 'at least', 'should'],
  ['piece.neckRest', 100, 'at most', 'should'],
  ['row.minimumWidth', 200, 'at least', 'must'],
  ['row.preferredWidth', 300, 'at least', 'should'],
  ['perimeter.gap', 5, 'nominal', 'must'],
  ['perimeter.overhang', 150, 'at most', 'should'],
  ['joint.gap', 3, 'nominal', 'must'],
  ['edgeJoint.gap', 0, 'nominal', 'must'],
  ['kerf', 0, 'nominal', 'must'],
  ['cut.tolerance', 2, 'at most', 'must'],
  ['oldJoint.clearance', 200, 'at least', 'should'],
  ['opening.jointClearance', 100, 'at least', 'should'],
  ['hatch.cornerClearance', 150, 'at least', 'should'],
  ['light.jointDistance', 1200, 'at least', 'should'],
  ['fixing.field', 230, 'at most', 'must'],
  ['fixing.boardEnd', 150, 'at most', 'should'],
  ['fixing.perimeter', 150, 'at most', 'should'],
  ['fixing.boundEdgeDistance', 10, 'at least', 'must'],
  ['fixing.cutEdgeDistance', 13, 'at least', 'must'],
  ['fixing.timberEdgeDistance', 6, 'at least', 'must'],
  ['fixing.floatingEdgeDistance', 25, 'at most', 'must'],
  ['fixing.embedment', 25, 'at least', 'must'],
  ['fixing.preferredEmbedment', 30, 'at least', 'should'],
  ['fixing.maximumEmbedment', 45, 'at most', 'must'],
];

/** Path of each problem that a call is refused for. */
function refusedFor(call: () => unknown): string[] {
  try {
    call();
  } catch (error) {
    if (isInputError(error)) return error.problems.map(({ path }) => path);
    throw error;
  }
  return [];
}

describe('the UK set', () => {
  it.each(DEFAULTS)('%s is %s, %s, %s', (key, value, sense, level) => {
    expect(ruleValue(uk, key, { fixing: 'screw' })).toMatchObject({ value, sense, level });
  });

  it('has a source, a standing and a unit for every row of every rule', () => {
    const keys = Object.keys(uk.rules) as RuleKey[];
    expect(keys).toEqual(
      expect.arrayContaining([...DEFAULTS.map(([key]) => key), 'support.centres', 'movementJoint.maximumRun']),
    );
    for (const key of keys) {
      expect(['mm', 'kg', 'joists'], key).toContain(uk.rules[key].unit);
      const rows = ruleTable(uk, key);
      expect(rows.length, key).toBeGreaterThan(0);
      for (const { source } of rows) {
        expect(source.standard.length, key).toBeGreaterThan(0);
        expect(['read', 'secondary', 'practice', 'memory'], key).toContain(source.standing);
        if (source.standing === 'read' || source.standing === 'secondary') {
          expect([source.edition, source.clause], key).not.toContain(undefined);
        }
      }
    }
  });

  it('only asks for what is preferred', () => {
    for (const key of Object.keys(uk.rules) as RuleKey[]) {
      if (key.toLowerCase().includes('preferred')) expect(uk.rules[key].level, key).toBe('should');
    }
  });

  it('lets the gap at a wall be 3 to 10', () => {
    expect(ruleValue(uk, 'perimeter.gap').range).toEqual({ least: 3, greatest: 10 });
  });

  it('does not pass what it has from memory or from practice as a standard', () => {
    expect(ruleValue(uk, 'movementJoint.maximumRun').source.standing).toBe('memory');
    for (const key of ['stagger.minimum', 'perimeter.overhang', 'fixing.embedment', 'fixing.preferredEmbedment'] as const) {
      expect(ruleValue(uk, key).source.standing, key).toBe('practice');
    }
  });
});

describe('ruleValue', () => {
  it('names each condition that a value needs and did not get', () => {
    expect(refusedFor(() => ruleValue(uk, 'support.centres'))).toEqual([
      'given.boardThickness',
      'given.orientation',
      'given.noggings',
    ]);
  });

  it('has nothing for a board thinner than the table', () => {
    const thin = { boardThickness: 6, orientation: 'across', noggings: false } as const;
    expect(refusedFor(() => ruleValue(uk, 'support.centres', thin))).toEqual(['given']);
  });

  it.each(['fixing.filed', '__proto__', 'constructor', 'toString'])('refuses the key %s', (key) => {
    expect(refusedFor(() => ruleValue(uk, key as RuleKey))).toEqual(['key']);
    expect(refusedFor(() => ruleTable(uk, key as RuleKey))).toEqual(['key']);
  });
});

describe('ruleTable', () => {
  it('gives each row with its conditions and its source', () => {
    expect(ruleTable(uk, 'fixing.field').map(({ value, when, source }) => [value, when?.fixing, source.clause])).toEqual([
      [230, undefined, 'K10 610, M20 610'],
      [150, 'nail', 'K10 610, M20 610'],
    ]);
  });
});

describe('withRules', () => {
  it('leaves the set that it starts from as it was', () => {
    const before = JSON.stringify(uk);
    const mine = withRules(uk, { 'stagger.minimum': 450, 'perimeter.gap': 8 });
    expect(ruleValue(mine, 'stagger.minimum').value).toBe(450);
    expect(JSON.stringify(uk)).toBe(before);
    expect(ruleValue(uk, 'stagger.minimum').value).toBe(300);
  });

  it('replaces a range with the number', () => {
    const gap = ruleValue(withRules(uk, { 'perimeter.gap': 8 }), 'perimeter.gap');
    expect(gap.value).toBe(8);
    expect(gap.range).toBeUndefined();
  });

  it('replaces every row of a table, whatever the conditions', () => {
    const mine = withRules(uk, { 'fixing.field': 200 });
    expect(ruleTable(mine, 'fixing.field')).toHaveLength(1);
    expect(ruleValue(mine, 'fixing.field', { fixing: 'nail' }).value).toBe(200);
  });

  it("keeps a caller's source, and says whose value it is without one", () => {
    const source = { standard: 'Fixing specification of the job', clause: '3', standing: 'read' as const };
    expect(ruleValue(withRules(uk, { 'fixing.field': { value: 200, source } }), 'fixing.field').source).toEqual(source);
    expect(ruleValue(withRules(uk, { 'fixing.field': 200 }), 'fixing.field').source.standard).toBe("the caller's own value");
  });

  it('leaves sense and level to the rule', () => {
    const { sense, level } = ruleValue(withRules(uk, { 'fixing.boardEnd': 120 }), 'fixing.boardEnd');
    expect([sense, level]).toEqual(['at most', 'should']);
  });

  it('refuses a key that does not exist, and numbers that are none', () => {
    expect(refusedFor(() => withRules(uk, { 'fixing.filed': 200 } as object))).not.toEqual([]);
    for (const value of [Number.NaN, -1, Infinity, '200']) {
      expect(
        refusedFor(() => withRules(uk, { 'fixing.field': value } as object)),
        String(value),
      ).not.toEqual([]);
    }
  });
});
