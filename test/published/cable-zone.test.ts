import { fixingLength, ruleSets, ruleValue } from 'soffitwright';
import { describe, expect, it } from 'vitest';

describe('the cable zone: BS 7671:2008 522.6.5, as quoted in an electrical industry pocket guide (secondary)', () => {
  it('keeps the point of every screw less than 50 mm into the joist', () => {
    const limit = ruleValue(ruleSets.uk, 'fixing.maximumEmbedment');
    expect(limit).toMatchObject({ sense: 'at most', level: 'must', source: { clause: '522.6.5', standing: 'secondary' } });
    expect(limit.value).toBeLessThan(50);
    for (const thickness of [9.5, 12.5, 15]) {
      for (const old of [0, 12.5, 28, 45.5, 60]) {
        const { recommended, maximum } = fixingLength({ thicknesses: [thickness], lining: [old] });
        expect(maximum - thickness - old).toBeLessThan(50);
        if (recommended !== null) expect(recommended - thickness - old).toBeLessThan(50);
      }
    }
  });
});
