import { type FixingCapacityRequest, fixingCapacity } from 'soffitwright';
import { describe, expect, it } from 'vitest';

const drywallScrew = { diameter: 3.5, embedment: 25 };
const request: FixingCapacityRequest = {
  fixing: drywallScrew,
  timber: { grade: 'C16' },
  hungMassPerArea: 15,
  joistSpacing: 400,
  fixingSpacing: 230,
};
const codes = ({ findings }: { findings: readonly { code: string }[] }): string[] => findings.map(({ code }) => code);

describe('what one screw carries', () => {
  // Arithmetic, g 9.81: load on its area, x 1.25 at the middle joist of two bays, x 1.35.
  it.each([
    [10, 230, 400, [9, 11.3, 15.2]],
    [15, 230, 400, [13.5, 16.9, 22.8]],
    [15, 300, 400, [17.7, 22.1, 29.8]],
    [25, 230, 600, [33.8, 42.3, 57.1]],
  ])('%i kg/m2, %i x %i', (hungMassPerArea, fixingSpacing, joistSpacing, expected) => {
    const { steps } = fixingCapacity({ ...request, hungMassPerArea, fixingSpacing, joistSpacing });
    expect(steps.slice(0, 3).map(({ value }) => value)).toEqual(expected);
  });

  it('includes the old ceiling, if it may let go', () => {
    const both = fixingCapacity({ ...request, hungMassPerArea: 10, oldCeilingMassPerArea: 15, joistSpacing: 600 });
    expect(both.demand).toBe(57.1);
    expect(both.steps[0].working).toContain('10 new and 15 of the old ceiling');
  });

  it('is most on the middle joist of two bays', () => {
    const demands = [1, 2, 3, 4, 5, 6].map((spans) => fixingCapacity({ ...request, spans }).demand);
    expect(demands.indexOf(Math.max(...demands))).toBe(1);
  });
});

describe('EN 1995-1-1', () => {
  it('has no formula for screws of 3.5 to 4.8 mm: refused, with a labelled fallback', () => {
    for (const diameter of [3.5, 3.9, 4.2, 4.8]) {
      const result = fixingCapacity({ ...request, fixing: { diameter, embedment: 30 } });
      expect(result).toMatchObject({ capacity: 0, ratio: null, ok: false });
      expect(codes(result)).toContain('capacity-unruled');
      expect(result.fallback?.label).toMatch(/^Conservative fallback, no rule for this fixing/);
    }
    // Even an inner diameter in proportion does not bring a thin screw into range.
    expect(fixingCapacity({ ...request, fixing: { ...drywallScrew, innerDiameter: 2.3 } }).capacity).toBe(0);
  });

  // Characteristic hold of the fallback, 20e-6 rho^2 d l: arithmetic, and lower than any other model.
  it.each([
    [3.5, 25, 168.2, 214.4],
    [3.5, 32, 215.3, 274.4],
    [3.9, 25, 187.4, 238.9],
    [4.2, 30, 242.2, 308.7],
  ])('falls back for %f x %i on %f N in C16 and %f N in C24', (diameter, embedment, c16, c24) => {
    for (const [grade, expected] of [
      ['C16', c16],
      ['C24', c24],
    ] as const) {
      const { fallback } = fixingCapacity({ ...request, fixing: { diameter, embedment }, timber: { grade } });
      expect(fallback?.steps[0].value).toBe(expected);
    }
  });

  it('takes a declared strength', () => {
    const declared = { ...drywallScrew, withdrawal: { strength: 12, density: 350 } };
    const result = fixingCapacity({ ...request, fixing: declared, timber: { grade: 'C24' } });
    // 12 x 3.5 x 25 x 0.6 / 1.3
    expect(result).toMatchObject({ capacity: 484.6, ok: true });
    expect(result).not.toHaveProperty('fallback');
    expect(result.source.clause).toContain('8.40a');
  });

  it('covers a thick screw, if its thread is long enough', () => {
    const thick = { diameter: 6, innerDiameter: 4, embedment: 55 };
    expect(fixingCapacity({ ...request, fixing: thick, timber: { grade: 'C24' } }).capacity).toBe(1761.7);
    const short = fixingCapacity({ ...request, fixing: { ...thick, embedment: 35 } });
    expect(short).toMatchObject({ capacity: 0, ok: false });
  });

  it('counts thread only, and less in wet places', () => {
    const hold = (more: Partial<FixingCapacityRequest['fixing']>, serviceClass?: 1 | 3): number =>
      fixingCapacity({
        ...request,
        fixing: { diameter: 3.9, embedment: 35, withdrawal: { strength: 12, density: 310 }, ...more },
        timber: { grade: 'C16', ...(serviceClass && { serviceClass }) },
      }).capacity;
    expect(hold({ threadLength: 30 })).toBeCloseTo((hold({}) * 30) / 35, 0);
    expect(hold({}, 3)).toBeCloseTo((hold({}) * 5) / 6, 0);
  });

  it('checks the head only by a declared or tested value, and says when it did not', () => {
    const declared = { ...drywallScrew, withdrawal: { strength: 12, density: 350 } };
    expect(codes(fixingCapacity({ ...request, fixing: declared }))).toEqual(['head-pull-through-unknown']);
    const withHead = fixingCapacity({ ...request, fixing: { ...declared, headPullThrough: 343 } });
    // 343 x 0.6 / 1.3 is less than the timber holds.
    expect(withHead).toMatchObject({ capacity: 158.3, ok: true });
    expect(codes(withHead)).toEqual([]);
    expect(fixingCapacity({ ...request, fixing: { ...declared, headPullThrough: 'ASTM C36' } })).toMatchObject({
      capacity: 158.3,
      source: { standard: 'ASTM C36', standing: 'secondary' },
    });
  });
});

describe('nails', () => {
  it('with a smooth shank carry no permanent load, whatever the method', () => {
    for (const method of ['ec5', 'nds', 'wood-handbook'] as const) {
      const result = fixingCapacity({
        ...request,
        fixing: { kind: 'nail', diameter: 2.65, embedment: 40 },
        timber: { grade: 'C24', specificGravity: 0.42 },
        method,
      });
      expect(result).toMatchObject({ capacity: 0, ok: false, source: { clause: '8.3.2 (1)' } });
      expect(result.findings).toMatchObject([{ code: 'nail-smooth-permanent', severity: 'error' }]);
      expect(result).not.toHaveProperty('fallback');
    }
  });

  it('with rings need a declared strength under EN 1995-1-1', () => {
    const ringed = { kind: 'nail' as const, shank: 'ringed' as const, diameter: 2.3, embedment: 20 };
    expect(fixingCapacity({ ...request, fixing: ringed })).toMatchObject({ capacity: 0, ok: false });
    const declared = fixingCapacity({ ...request, fixing: { ...ringed, withdrawal: { strength: 5, density: 310 } } });
    expect(declared.capacity).toBe(106.2);
  });
});

describe('other methods', () => {
  const american = { ...request, timber: { specificGravity: 0.42 } };

  // Arithmetic on the published formulas: No. 6 screw (0.138 in), 5/8 in of thread, C_D 0.9: 39.0 lb.
  it('the NDS allows 39.0 lb to a No. 6 screw with 5/8 in in spruce-pine-fir', () => {
    const { capacity } = fixingCapacity({
      ...american,
      fixing: { diameter: 0.138 * 25.4, embedment: 15.875 },
      method: 'nds',
    });
    expect(capacity / 4.4482216).toBeCloseTo(39, 1);
  });

  // Arithmetic: 1671 N is the mean test value of 3.5 x 25 at G 0.42.
  it('the Wood Handbook divided by 5 holds more than the NDS allows', () => {
    const handbook = fixingCapacity({ ...american, method: 'wood-handbook' });
    expect(Math.round(handbook.steps.find(({ name }) => name.startsWith('withdrawal, mean'))?.value ?? 0)).toBe(1671);
    expect(handbook.capacity).toBe(334.2);
    expect(handbook.capacity).toBeGreaterThan(fixingCapacity({ ...american, method: 'nds' }).capacity);
  });

  it('ask for a specific gravity: it cannot be had from a grade', () => {
    expect(() => fixingCapacity({ ...request, method: 'nds' })).toThrow('specificGravity');
    expect(() => fixingCapacity({ ...request, timber: { specificGravity: 0.42 } })).toThrow('density');
    expect(() => fixingCapacity({ ...request, timber: {} })).toThrow('timber');
  });
});
