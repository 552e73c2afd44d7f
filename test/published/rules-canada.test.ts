import { type Conditions, fixingSpacing, ruleSets, ruleValue } from 'soffitwright';
import { describe, expect, it } from 'vitest';

const { nbcCanada } = ruleSets;
const into = (given: Conditions): number | null => ruleValue(nbcCanada, 'fixing.embedment', given).value;

describe('the Canadian set', () => {
  it('takes a rating between two rows from the higher, and gives nothing beyond the last', () => {
    expect(into({ fireRating: 30 })).toBe(30);
    expect(into({ fireRating: 50 })).toBe(45);
    expect(() => into({ fireRating: 120 })).toThrow('conditions that a row of fixing.embedment serves');
    expect(into({ fireRating: 0 })).toBe(15);
  });

  it('asks an outer layer for as much in the wood as the first: the housing agency restates it so (secondary)', () => {
    for (const fixing of ['screw', 'nail'] as const) expect(into({ fixing, layer: 2 })).toBe(into({ fixing, layer: 1 }));
  });

  it('asks screws of a ceiling for 300 in the field and at its edges', () => {
    const { field, boardEnd, perimeter } = fixingSpacing({ rules: nbcCanada, boardThickness: 12.7, joistSpacing: 406.4 });
    expect([field, boardEnd, perimeter]).toEqual([300, 300, 300]);
  });
});
