import { type RuleKey, ruleSets, ruleValue } from 'soffitwright';
import { describe, expect, it } from 'vitest';

const { asNzs } = ruleSets;

describe('AS/NZS 2589:2017', () => {
  it('clause 2.7.2 (a) (read): two screwed ends share 32 mm of face, which the set keeps with a tight joint', () => {
    const distance = (key: RuleKey): number => ruleValue(asNzs, key).value as number;
    expect(2 * (distance('fixing.cutEdgeDistance') + distance('fixing.timberEdgeDistance'))).toBe(32);
  });

  it('as restated by an inspector (secondary): 30 mm screws for 10 mm board, 20 into the timber', () => {
    expect(10 + (ruleValue(asNzs, 'fixing.embedment').value as number)).toBe(30);
  });
});
