import { fixingLength, ruleSets, withRules } from 'soffitwright';
import { describe, expect, it } from 'vitest';

const codes = (findings: readonly { code: string }[]): string[] => findings.map(({ code }) => code);

describe('fixingLength', () => {
  it('takes each layer at its thickest, and the upper limit without the tolerances', () => {
    const { minimum, preferred, maximum } = fixingLength({
      thicknesses: [12.5],
      lining: [{ kind: 'lath-and-plaster', thickness: 28, tolerance: 4 }],
    });
    expect([minimum, preferred, maximum]).toEqual([12.5 + 32 + 25, 12.5 + 32 + 30, 12.5 + 28 + 45]);
  });

  it('falls back to the least embedment where the preferred one would go too deep, with a warning', () => {
    const { recommended, embedment, findings } = fixingLength({ thicknesses: [12.5], lining: [28], serviceDepth: 37 });
    expect([recommended, embedment]).toEqual([70, 29.5]);
    expect(findings[0]).toMatchObject({ code: 'embedment-below-preferred', severity: 'warning', value: 29.5, limit: 30 });
  });

  it('says what to do where nothing holds and stays clear', () => {
    const shallow = fixingLength({ thicknesses: [12.5], lining: [28], serviceDepth: 25 });
    expect(shallow.recommended).toBeNull();
    expect(shallow.embedment).toBeNull();
    expect(shallow.findings[0]).toMatchObject({ code: 'embedment-deep', severity: 'error' });
    expect(shallow.findings[0].remedy).toContain('Trace');
    const long = fixingLength({ thicknesses: [12.5], lining: [70] });
    expect(long.findings[0]).toMatchObject({ code: 'embedment-short', severity: 'error', value: 17.5, limit: 25 });
  });

  it('shows what a screw that is 1.5 short costs', () => {
    expect(fixingLength({ thicknesses: [12.5], lining: [22.5] }).recommended).toBe(65);
    expect(fixingLength({ thicknesses: [12.5], lining: [22.5], lengthTolerance: 1.5 })).toMatchObject({
      recommended: 70,
      embedment: 33.5,
    });
  });

  it('counts a screw that is longer than its name against the upper limit', () => {
    const request = { thicknesses: [12.5], lining: [28], stock: [70, 85] };
    expect(fixingLength(request)).toMatchObject({ maximum: 85.5, longest: 85 });
    expect(fixingLength({ ...request, lengthTolerance: 1.5 })).toMatchObject({ maximum: 84, longest: 70 });
  });

  it('knows what DIN 18182-2 lets a screw be short, and says what it costs', () => {
    const request = { thicknesses: [12.5], lining: [22.5] };
    const found = fixingLength({ ...request, lengthTolerance: 'DIN 18182-2' });
    expect(found).toMatchObject({ recommended: 70, embedment: 33.5, tolerance: { value: 1.5, trueToLength: 65 } });
    expect(found.findings.find(({ code }) => code === 'screw-length-tolerance')).toMatchObject({
      severity: 'note',
      value: 1.5,
      source: { standard: 'DIN 18182-2', edition: '1987' },
      message:
        'A screw may be 1.5 mm shorter or longer than its name: 70 mm is taken, with 33.5 mm into the joist at the least; screws true to their length could be 65 mm.',
    });
    expect(fixingLength(request)).not.toHaveProperty('tolerance');
    expect(codes(fixingLength(request).findings)).not.toContain('screw-length-tolerance');
  });

  it('names the longest length to be had that stays out of where pipes and cables may be', () => {
    expect(fixingLength({ thicknesses: [12.5], lining: [28] })).toMatchObject({ maximum: 85.5, recommended: 75, longest: 80 });
    expect(fixingLength({ thicknesses: [12.5], lining: [28], joistDepth: 100 })).toMatchObject({ maximum: 73, longest: 70 });
    expect(fixingLength({ thicknesses: [12.5], lining: [28], serviceDepth: 25 }).longest).toBeNull();
    expect(fixingLength({ thicknesses: [12.5], lining: [28], probed: false }).longest).toBeNull();
  });

  it('always asks for a scan', () => {
    expect(codes(fixingLength({ thicknesses: [9.5], lining: [] }).findings)).toContain('scan-for-services');
  });
});

describe('a thicker old ceiling may cost the preferred embedment', () => {
  const rules = { 'fixing.preferredEmbedment': 30 };
  // Over a cable 36 up a screw may go 31 in; lengths of 67 and 70, closer together than 30 is to 25.
  const at = (old: number) => fixingLength({ thicknesses: [10], lining: [old], stock: [67, 70], rules, serviceDepth: 36 });

  it('and with lengths that close together the shortest that holds may be less than before, with a warning', () => {
    expect(at(29)).toMatchObject({ preferred: 69, maximum: 70, recommended: 70, embedment: 31 });
    expect(at(31)).toMatchObject({ minimum: 66, preferred: 71, maximum: 72, recommended: 67, embedment: 26 });
    expect(codes(at(31).findings)).toContain('embedment-below-preferred');
  });
});

describe('invented rooms', () => {
  const into = (preferred: number) => withRules(ruleSets.uk, { 'fixing.preferredEmbedment': preferred });

  it('lath and plaster of 28 under 12.5: 70 with 29.5 into the joist', () => {
    expect(fixingLength({ thicknesses: [12.5], lining: [28], rules: into(29.5) })).toMatchObject({
      recommended: 70,
      embedment: 29.5,
    });
  });

  it('the cable rule: 70 passes and 90 does not; over a cable 37 up 70 passes and 75 does not', () => {
    const with25 = into(25);
    const deep = fixingLength({ thicknesses: [12.5], lining: [28], rules: with25 });
    expect(deep.recommended).toBe(70);
    expect(deep.maximum).toBeLessThan(90);
    const shallow = fixingLength({ thicknesses: [12.5], lining: [28], rules: with25, serviceDepth: 37 });
    expect(shallow.recommended).toBe(70);
    expect(shallow.maximum).toBe(12.5 + 28 + 32);
    expect(shallow.maximum).toBeLessThan(75);
  });

  it('two dense layers under 9.5 + 3: 60 and 70 when a screw may be 1.5 short', () => {
    const lining = [3, 9.5];
    expect(fixingLength({ thicknesses: [12.5], lining, lengthTolerance: 1.5 }).recommended).toBe(60);
    expect(fixingLength({ thicknesses: [12.5, 12.5], lining, lengthTolerance: 1.5 }).recommended).toBe(70);
    // Screws true to length just do with 55.
    expect(fixingLength({ thicknesses: [12.5], lining }).recommended).toBe(55);
  });
});

describe('what a screw must reach, and what it must not', () => {
  const lath = [{ kind: 'lath-and-plaster' as const, thickness: 28, tolerance: 7 }];

  it('keeps below the lowest hole that may be in a shallow joist', () => {
    // 100 deep: a hole of 25 in the middle lies 37.5 up, less a margin of 5.
    const { maximum, recommended } = fixingLength({ thicknesses: [12.5], lining: [28], joistDepth: 100 });
    expect([maximum, recommended]).toEqual([12.5 + 28 + 32.5, 70]);
  });

  it('says so where only a deeper screw holds', () => {
    const { recommended, findings } = fixingLength({ thicknesses: [12.5], lining: [28], joistDepth: 72 });
    // 22 is less than holds, so that the shortest that does is taken.
    expect(recommended).toBe(70);
    expect(findings.find(({ code }) => code === 'embedment-hole-zone')).toMatchObject({
      severity: 'warning',
      value: 29.5,
      limit: 22,
    });
  });

  it('leaves deep joists to the cable rule', () => {
    const { findings: _, ...unknown } = fixingLength({ thicknesses: [12.5], lining: [28] });
    for (const joistDepth of [134, 195, 300]) {
      expect(fixingLength({ thicknesses: [12.5], lining: [28], joistDepth })).toMatchObject(unknown);
    }
  });

  it.each([
    // 0.15 of the depth where the warranty body allows it, to 250; beyond it 0.125, at most 35.
    [200, 30],
    [250, 37.5],
    [300, 35],
  ])('says how deep a notch may be in joists of %i: %f, and asks for a scan whatever the depth', (joistDepth, notch) => {
    const { findings } = fixingLength({ thicknesses: [12.5], lining: [28], joistDepth });
    const scan = findings.find(({ code }) => code === 'scan-for-services');
    expect(scan?.message).toContain(`up to ${notch} mm in joists ${joistDepth} mm deep: scan every joist`);
  });

  it('goes deeper where fire resistance is declared, and knows no rating beyond the table', () => {
    const rules = ruleSets.nbcCanada;
    const stock = [32, 38, 41, 51, 64, 76];
    const plain = fixingLength({ thicknesses: [12.7], lining: [12.7], rules, stock });
    expect(plain).toMatchObject({ minimum: 40.4, recommended: 51 });
    const rated = fixingLength({ thicknesses: [12.7], lining: [12.7], rules, stock, fireRating: 60 });
    // 45 into the joist, where cables may run 32 up: nothing serves until they are traced.
    expect(rated).toMatchObject({ minimum: 70.4, recommended: null });
    expect(codes(rated.findings)).toContain('embedment-deep');
    expect(() => fixingLength({ thicknesses: [12.7], lining: [], rules, fireRating: 120 })).toThrow('fireRating');
  });

  it('says where a rule set has no figure for a rating', () => {
    const { findings } = fixingLength({ thicknesses: [12.5], lining: [12.5], fireRating: 30 });
    expect(findings.find(({ code }) => code === 'fire-rating-unruled')).toMatchObject({ severity: 'warning', value: 30 });
  });

  it('counts only thread as hold', () => {
    const { threadInJoist, findings } = fixingLength({ thicknesses: [12.5], lining: [28], threadLength: 20 });
    expect(threadInJoist).toBe(20);
    expect(codes(findings)).toContain('thread-short');
    expect(fixingLength({ thicknesses: [12.5], lining: [28], threadLength: 50 }).threadInJoist).toBe(34.5);
  });

  it('gives a range and no length where nobody has probed', () => {
    const guessed = fixingLength({ thicknesses: [12.5], lining: lath, probed: false });
    expect(guessed).toMatchObject({ recommended: null, embedment: null, range: { shortest: 75, longest: 80 } });
    expect(guessed.findings[0]).toMatchObject({ code: 'lining-not-probed', severity: 'warning' });
    expect(fixingLength({ thicknesses: [12.5], lining: [], probed: false }).range).toEqual({ shortest: 55, longest: 80 });
  });

  it('lets each of two layers reach the joist', () => {
    const first = fixingLength({ thicknesses: [12.5], lining: [12.5], layer: 1 });
    const second = fixingLength({ thicknesses: [12.5, 12.5], lining: [12.5], layer: 2 });
    expect((second.recommended ?? 0) - (first.recommended ?? 0)).toBeGreaterThanOrEqual(10);
    expect(second.embedment).toBeGreaterThanOrEqual(30);
  });

  it('names what it takes from memory', () => {
    const { findings } = fixingLength({ thicknesses: [12.5], lining: [12.5], rules: ruleSets.din });
    expect(findings.find(({ code }) => code === 'rule-from-memory')?.message).toContain('DIN 18181');
    expect(codes(fixingLength({ thicknesses: [12.5], lining: [12.5] }).findings)).not.toContain('rule-from-memory');
  });
});
