import { fixingLength, fixingsPerLine, inferJoists, placeFixings, rectangle, ruleSets, ruleValue, withRules } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { handLaid, joint } from '../generators/handLaid.js';

// What the trade does and nobody published: each figure is common practice, no source.

describe('common practice, no source: joists typically at 400', () => {
  it('three joists found with one passed over are taken to be at 400', () => {
    const room = { outline: rectangle(3600, 3000) };
    const marks = [425, 825, 1625].map((x) => ({ x, y: 1500, kind: 'probe' as const }));
    const { spacing } = inferJoists({ room, marks, direction: 'y' });
    expect(Math.abs((spacing?.value ?? 0) - 400)).toBeLessThan(3);
  });

  it('carries boards of 9.5, 12.5 and 15 without noggings between the joists', () => {
    for (const boardThickness of [9.5, 12.5, 15]) {
      const { value } = ruleValue(ruleSets.uk, 'support.centres', { boardThickness, orientation: 'across', noggings: false });
      expect(value).toBeGreaterThanOrEqual(400);
    }
  });
});

describe('common practice, no source: about one screw each 300, five across a board of 1200', () => {
  it('counts five on a line', () => {
    expect(fixingsPerLine({ width: 1200, spacing: 300, edgeDistance: 10 }).count).toBe(5);
  });

  it('places five on every joist under the board', () => {
    const room = { outline: rectangle(3600, 3000) };
    const { lines } = placeFixings({
      room,
      joists: { direction: 'y', positions: [25, 425, 825, 1225, 1625, 2025, 2425, 2825, 3225, 3575], width: 47 },
      layout: handLaid({ id: '1.1', ends: [joint(425, 'J2'), joint(2825, 'J8')], low: 5, high: 1205 }),
      rules: withRules(ruleSets.uk, { 'fixing.field': 300, 'fixing.boardEnd': 300, 'fixing.perimeter': 300 }),
    });
    expect(lines.map(({ count }) => count)).toEqual([5, 5, 5, 5, 5, 5, 5]);
  });
});

describe('common practice, no source: at least 30 of screw in the joist when over-boarding', () => {
  it.each([9.5, 12.5, 15.5, 20, 28])('under an old ceiling of %f', (old) => {
    for (const board of [9.5, 12.5, 15]) {
      expect(fixingLength({ thicknesses: [board], lining: [old] }).embedment).toBeGreaterThanOrEqual(30);
    }
  });

  it('a shorter screw that is all there is comes with a warning', () => {
    const { recommended, findings } = fixingLength({ thicknesses: [12.5], lining: [20], stock: [60] });
    expect(recommended).toBe(60);
    expect(findings[0]).toMatchObject({ code: 'embedment-below-preferred', value: 27.5, limit: 30 });
  });
});

describe('common practice, no source: 75 through 12.5 of board and about 20 of old ceiling leaves at least 40', () => {
  it.each([18, 20, 22])('%i of old ceiling', (old) => {
    const { embedment } = fixingLength({ thicknesses: [12.5], lining: [old], stock: [75] });
    expect(embedment).toBe(75 - 12.5 - old);
    expect(embedment).toBeGreaterThanOrEqual(40);
  });
});
