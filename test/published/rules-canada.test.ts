import { type Conditions, fixingSpacing, isInputError, type RuleKey, ruleSets, ruleValue } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { furring } from '../../src/rules/standards/nbc2023alberta.js';
import { checkPublished, type PublishedRow } from './publishedTable.js';

const { nbcCanada } = ruleSets;
interface Asked {
  readonly key: RuleKey;
  readonly given: Conditions;
}

/** The value, or `null` where the table does not permit it. */
function valueOrNotPermitted({ key, given }: Asked): number | null {
  try {
    return ruleValue(nbcCanada, key, given).value;
  } catch (error) {
    if (isInputError(error) && error.code === 'no-such-row') return null;
    throw error;
  }
}

const row = (
  clause: string,
  key: RuleKey,
  given: Conditions,
  expected: number | null,
  how: 'read' | 'secondary' = 'read',
): PublishedRow<Asked, number | null> => ({
  id: `${clause} ${JSON.stringify(given)}`,
  inputs: { key, given },
  expected,
  tolerance: 0,
  source: 'National Building Code, 2023 Alberta edition',
  how,
});

const across = 'across';
const along = 'along';
const textured = 'textured';
const support = (given: Conditions, expected: number | null) => row('nbc-9.29.5.3', 'support.centres', given, expected);

checkPublished(
  'support spacing under ceilings',
  [
    support({ boardThickness: 9.5, orientation: along }, null),
    support({ boardThickness: 9.5, orientation: along, finish: textured }, null),
    support({ boardThickness: 9.5, orientation: across }, 400),
    support({ boardThickness: 9.5, orientation: across, finish: textured }, null),
    support({ boardThickness: 12.7, orientation: along }, 400),
    support({ boardThickness: 12.7, orientation: along, finish: textured }, null),
    support({ boardThickness: 12.7, orientation: across }, 600),
    support({ boardThickness: 12.7, orientation: across, finish: 'painted' }, 600),
    support({ boardThickness: 12.7, orientation: across, finish: textured }, 400),
    support({ boardThickness: 15.9, orientation: along }, 400),
    support({ boardThickness: 15.9, orientation: along, finish: textured }, null),
    support({ boardThickness: 15.9, orientation: across }, 600),
    support({ boardThickness: 15.9, orientation: across, finish: textured }, 600),
    support({ boardThickness: 12.7, orientation: along, board: 'sag-resistant' }, 400),
    support({ boardThickness: 12.7, orientation: along, board: 'sag-resistant', finish: textured }, null),
    support({ boardThickness: 12.7, orientation: across, board: 'sag-resistant' }, 600),
    support({ boardThickness: 12.7, orientation: across, board: 'sag-resistant', finish: textured }, 600),
  ],
  valueOrNotPermitted,
);

const into = (given: Conditions, expected: number) => row('nbc-9.29.5.5', 'fixing.embedment', given, expected);

checkPublished(
  'penetration into wood, ceilings',
  [
    into({ fixing: 'nail' }, 20),
    into({ fixing: 'screw' }, 15),
    into({ fixing: 'nail', fireRating: 45 }, 30),
    into({ fixing: 'screw', fireRating: 45 }, 30),
    into({ fixing: 'nail', fireRating: 60 }, 45),
    into({ fixing: 'screw', fireRating: 60 }, 45),
    into({ fixing: 'nail', fireRating: 90 }, 60),
    into({ fixing: 'screw', fireRating: 90 }, 60),
  ],
  valueOrNotPermitted,
);

checkPublished(
  'spacing and edges',
  [
    row('nbc-9.29.5.8-1', 'fixing.field', { fixing: 'nail' }, 180),
    row('nbc-9.29.5.8-1-pairs', 'fixing.pairField', {}, 300),
    row('nbc-9.29.5.8-1-distance', 'fixing.pairDistance', {}, 50),
    row('nbc-9.29.5.9-1', 'fixing.field', { fixing: 'screw' }, 300, 'secondary'),
    row('nbc-9.29.5.9-6', 'fixing.boundEdgeDistance', {}, 10),
    row('nbc-9.29.5.9-6', 'fixing.cutEdgeDistance', {}, 10),
  ],
  valueOrNotPermitted,
);

describe('the Canadian set', () => {
  it('takes a rating between two rows from the higher, and gives nothing beyond the last', () => {
    expect(valueOrNotPermitted({ key: 'fixing.embedment', given: { fireRating: 30 } })).toBe(30);
    expect(valueOrNotPermitted({ key: 'fixing.embedment', given: { fireRating: 50 } })).toBe(45);
    expect(valueOrNotPermitted({ key: 'fixing.embedment', given: { fireRating: 120 } })).toBeNull();
    expect(valueOrNotPermitted({ key: 'fixing.embedment', given: { fireRating: 0 } })).toBe(15);
  });

  it('asks screws of a ceiling for 300 in the field and at its edges', () => {
    const { field, boardEnd, perimeter } = fixingSpacing({ rules: nbcCanada, boardThickness: 12.7, joistSpacing: 406.4 });
    expect([field, boardEnd, perimeter]).toEqual([300, 300, 300]);
  });

  it('keeps table 9.29.3.1 of furring, nbc-9.29.3.1 (read): 19 x 38, and wider over wide supports', () => {
    expect(
      furring.rows.map(({ centres, continuous, supports400, supports600 }) => [centres, continuous, supports400, supports600]),
    ).toEqual([
      [300, [19, 38], [19, 38], [19, 64]],
      [400, [19, 38], [19, 38], [19, 64]],
      [600, [19, 38], [19, 64], [19, 89]],
    ]);
  });
});
