import { fixingCapacity } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import {
  materialFactor,
  penetrationFactor,
  smoothNailStrength,
  smoothNailWithdrawal,
} from '../../src/rules/standards/en1995of2008.js';
import { nailWithdrawal, woodScrewWithdrawal } from '../../src/rules/standards/nds2018.js';
import { screwUltimate } from '../../src/rules/standards/woodHandbook.js';

// Arithmetic by hand on published formulas: regression values, nobody published them.

const INCH = 25.4;
const NEWTONS_PER_POUND = 4.4482216;

describe('screws of 3.5 to 4.2 mm by three formulas, N; the last is only a low reference', () => {
  it.each([
    [3.5, 25, [1228, 1671], [223, 303], [168, 214]],
    [3.5, 32, [1571, 2139], [285, 388], [215, 274]],
    [3.9, 25, [1368, 1862], [248, 338], [187, 239]],
    [4.2, 30, [1768, 2406], [321, 437], [242, 309]],
  ] as const)('%f x %i', (d, thread, handbook, allowable, smooth) => {
    for (const [i, g] of [0.36, 0.42].entries()) {
      expect(Math.round(screwUltimate(g, d, thread))).toBe(handbook[i]);
      const newtons = (woodScrewWithdrawal(g, d / INCH) * thread * NEWTONS_PER_POUND) / INCH;
      expect(Math.round(newtons)).toBe(allowable[i]);
    }
    for (const [i, density] of [310, 350].entries()) {
      expect(Math.abs(smoothNailStrength(density) * d * thread - smooth[i])).toBeLessThanOrEqual(0.5);
    }
  });
});

describe('allowable withdrawal of wood screws and nails, lb for each inch', () => {
  it.each([
    [0.36, [51, 60.6, 70.2]],
    [0.42, [69.4, 82.4, 95.5]],
    [0.43, [72.7, 86.4, 100.1]],
    [0.5, [98.3, 116.9, 135.4]],
    [0.55, [119, 141.4, 163.8]],
  ])('screws No. 6, 8 and 10, G %f', (g, expected) => {
    expect([0.138, 0.164, 0.19].map((d) => Math.round(woodScrewWithdrawal(g, d) * 10) / 10)).toEqual(expected);
  });

  it.each([
    [0.42, [12.6, 13.6, 15.6, 17.8, 20.7, 23.3, 25.6]],
    [0.5, [19.5, 21, 24.2, 27.6, 32, 36.1, 39.5]],
    [0.55, [24.8, 26.6, 30.6, 35, 40.6, 45.8, 50.2]],
  ])('smooth nails, G %f', (g, expected) => {
    const diameters = [0.08, 0.086, 0.099, 0.113, 0.131, 0.148, 0.162];
    expect(diameters.map((d) => Math.round(nailWithdrawal(g, d) * 10) / 10)).toEqual(expected);
  });
});

describe('what hangs on one screw, N: its area, the middle joist of two bays, and with the factor of permanent load', () => {
  it.each([
    [10, 230, 400, 9, 11.3, 15.2],
    [15, 230, 400, 13.5, 16.9, 22.8],
    [15, 300, 400, 17.7, 22.1, 29.8],
    [25, 230, 600, 33.8, 42.3, 57.1],
  ])('%i kg/m2, screws at %i on joists at %i', (hungMassPerArea, fixingSpacing, joistSpacing, area, joist, factored) => {
    const { steps, demand } = fixingCapacity({
      fixing: { diameter: 3.5, embedment: 25 },
      timber: { grade: 'C16' },
      hungMassPerArea,
      joistSpacing,
      fixingSpacing,
    });
    expect(steps.slice(0, 3).map(({ value }) => value)).toEqual([area, joist, factored]);
    expect(demand).toBe(factored);
  });

  it('the lowest floor of the capacities, 168 N x 0.6 / 1.3, is above all of these', () => {
    const { fallback, demand } = fixingCapacity({
      fixing: { diameter: 3.5, embedment: 25 },
      timber: { grade: 'C16' },
      hungMassPerArea: 25,
      joistSpacing: 600,
      fixingSpacing: 230,
    });
    expect(Math.round(fallback?.capacity ?? 0)).toBe(78);
    expect(demand).toBeLessThan(fallback?.capacity ?? 0);
  });
});

describe('a textbook nail of 2.65, 25 into C18 that dries under load, under suction: only its inputs are in print', () => {
  it('holds 32.4 N, 22.4 N by design, so that 600 N for each metre wants one each 37 mm', () => {
    const strength = smoothNailStrength(320);
    expect(strength).toBeCloseTo(2.048, 9);
    expect(penetrationFactor(2.65, 25, 'smooth')).toBeCloseTo(0.358, 3);
    const characteristic = (smoothNailWithdrawal(2.65, 25, 320) * 2) / 3;
    expect(characteristic).toBeCloseTo(32.4, 1);
    const design = (0.9 * characteristic) / materialFactor();
    expect(design).toBeCloseTo(22.4, 1);
    expect(Math.floor((design / 600) * 1000)).toBe(37);
  });
});

describe('psf on one screw, lb, and the share of a No. 6 screw with 5/8 in of thread in spruce-pine-fir', () => {
  it.each([
    [2.2, 16, 2.93],
    [2.2, 24, 4.4],
    [2.75, 16, 3.67],
    [10.2, 16, 13.6],
    [10.2, 24, 20.4],
    [10.75, 24, 21.5],
  ])('%f psf, joists at %i in, screws at 12 in: %f lb', (psf, joists, expected) => {
    const kgPerM2 = (psf * NEWTONS_PER_POUND) / 9.81 / 0.3048 ** 2;
    const { demand, ratio } = fixingCapacity({
      fixing: { diameter: 0.138 * INCH, embedment: 0.625 * INCH },
      timber: { specificGravity: 0.42 },
      hungMassPerArea: kgPerM2,
      joistSpacing: joists * INCH,
      fixingSpacing: 12 * INCH,
      spans: 1,
      method: 'nds',
    });
    expect(Math.abs(demand / NEWTONS_PER_POUND - expected)).toBeLessThan(0.02);
    expect(Math.abs((ratio ?? 0) - expected / 39)).toBeLessThan(0.005);
  });
});
