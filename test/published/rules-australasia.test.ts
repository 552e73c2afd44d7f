import { type Conditions, type RuleKey, ruleSets, ruleValue } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { diaphragmSheet } from '../../src/rules/standards/nzs3604of2011.js';
import { checkPublished, type PublishedRow } from './publishedTable.js';

const { asNzs } = ruleSets;
interface Asked {
  readonly key: RuleKey;
  readonly given: Conditions;
}
const row = (
  clause: string,
  key: RuleKey,
  given: Conditions,
  expected: number,
  source: string,
  how: 'read' | 'secondary',
): PublishedRow<Asked, number> => ({ id: clause, inputs: { key, given }, expected, tolerance: 0, source, how });

const NZS = 'NZS 3604:2011, as restated by the standards body';
const PAGE = 'AS/NZS 2589, as restated by an Australian trade page';

checkPublished(
  'Australia and New Zealand',
  [
    row('nzs-3604-2011-edges', 'fixing.boardEnd', { diaphragm: true }, 150, NZS, 'read'),
    row('nzs-3604-2011-edges', 'fixing.perimeter', { diaphragm: true }, 150, NZS, 'read'),
    row('nzs-3604-2011-field', 'fixing.field', { diaphragm: true }, 300, NZS, 'read'),
    row('nzs-3604-2011-edge-distance', 'fixing.boundEdgeDistance', { diaphragm: true }, 10, NZS, 'read'),
    row('as-nzs-2589-2017-edges', 'fixing.cutEdgeDistance', {}, 10, PAGE, 'secondary'),
    row('as-nzs-2589-2017-edges-greatest', 'fixing.floatingEdgeDistance', {}, 16, PAGE, 'secondary'),
    row(
      'as-nzs-2589-2017-3.4',
      'movementJoint.maximumRun',
      {},
      12_000,
      'Australian public works specification of buildings 2009, 9.8',
      'secondary',
    ),
  ],
  ({ key, given }) => ruleValue(asNzs, key, given).value as number,
);

describe('AS/NZS 2589:2017', () => {
  it('clause 2.7.2 (a) (read): two screwed ends share 32 mm of face, which the set keeps with a tight joint', () => {
    const distance = (key: RuleKey): number => ruleValue(asNzs, key).value as number;
    expect(2 * (distance('fixing.cutEdgeDistance') + distance('fixing.timberEdgeDistance'))).toBe(32);
  });

  it('as restated by an inspector (secondary): 30 mm screws for 10 mm board, 20 into the timber', () => {
    expect(10 + (ruleValue(asNzs, 'fixing.embedment').value as number)).toBe(30);
  });
});

describe('NZS 3604:2011, nzs-3604-2011-sheet (read)', () => {
  it('asks a bracing ceiling for 10 mm board of 600 kg/m3 in sheets of 1800 x 900, at most 7.5 m, twice as long as wide, 15 degrees', () => {
    const { thickness, density, sheetLength, sheetWidth, greatestLength, greatestLengthToWidth, greatestSlope } = diaphragmSheet;
    expect([thickness, density, sheetLength, sheetWidth, greatestLength, greatestLengthToWidth, greatestSlope]).toEqual([
      10, 600, 1800, 900, 7500, 2, 15,
    ]);
  });
});
