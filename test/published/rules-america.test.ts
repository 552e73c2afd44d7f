import { type Conditions, fixingLength, type RuleKey, ruleSets, ruleValue, withRules } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { flexuralStrength } from '../../src/rules/standards/gypsumAssociation.js';
import { diaphragmCapacity } from '../../src/rules/standards/irc2018.js';
import { checkPublished, type PublishedRow } from './publishedTable.js';

const { ircUs } = ruleSets;
const INCH = 25.4;
interface Asked {
  readonly key: RuleKey;
  readonly given: Conditions;
}

const row = (
  clause: string,
  key: RuleKey,
  given: Conditions,
  inches: number,
  source: string,
  how: 'read' | 'secondary',
): PublishedRow<Asked, number> => ({
  id: `${clause} ${JSON.stringify(given)}`,
  inputs: { key, given },
  expected: inches * INCH,
  tolerance: 1e-9,
  source,
  how,
});

checkPublished(
  'United States, printed in inches',
  [
    row('irc-2018-R702.3.5.1', 'fixing.embedment', {}, 5 / 8, 'IRC R702.3.5.1, as quoted in a plan review', 'secondary'),
    row('irc-2018-R702.3.6-spacing', 'fixing.field', { diaphragm: true }, 7, 'IRC 2018 table R702.3.6 note d', 'read'),
    row('irc-2018-R702.3.6-spacing', 'fixing.perimeter', { diaphragm: true }, 7, 'IRC 2018 table R702.3.6 note d', 'read'),
    row('irc-2018-R702.3.6-edge', 'fixing.cutEdgeDistance', {}, 3 / 8, 'IRC 2018 table R702.3.6 note d', 'read'),
    row('ga-guide-III-nails', 'fixing.field', { fixing: 'nail' }, 7, 'trade association guide, section III', 'read'),
    row('ga-guide-III-pairs', 'fixing.pairField', {}, 12, 'trade association guide, section III', 'read'),
    row('ga-guide-III-distance', 'fixing.pairDistance', {}, 2, 'trade association guide, section III: 2 to 2 1/2 in', 'read'),
    row(
      'navy-14044-nails',
      'fixing.embedment',
      { fixing: 'nail', shank: 'ringed' },
      3 / 4,
      'US Navy training manual 14044',
      'read',
    ),
    row('navy-14044-nails', 'fixing.embedment', { fixing: 'nail', shank: 'smooth' }, 1, 'US Navy training manual 14044', 'read'),
    row(
      'astm-c840-20.3.3',
      'movementJoint.maximumRun',
      {},
      600,
      'ASTM C840 20.3.3, as quoted by a trade association: 50 ft',
      'secondary',
    ),
    row(
      'irc-2018-R702.3.5-d',
      'support.centres',
      { boardThickness: 12.7, orientation: 'across', finish: 'textured' },
      16,
      'IRC table R702.3.5 footnote d, as quoted by a code forum',
      'secondary',
    ),
    row(
      'irc-2018-R702.3.5-d',
      'support.centres',
      { boardThickness: 12.7, orientation: 'across', finish: 'textured', board: 'sag-resistant' },
      24,
      'IRC table R702.3.5 footnote d, as quoted by a code forum',
      'secondary',
    ),
    row(
      'irc-2018-R702.3.5-d',
      'support.centres',
      { boardThickness: 15.9, orientation: 'across', finish: 'textured' },
      24,
      'IRC table R702.3.5 footnote d, as quoted by a code forum',
      'secondary',
    ),
  ],
  ({ key, given }) => ruleValue(ircUs, key, given).value as number,
);

checkPublished(
  'nails: US Navy training manual 14044, navy-14044-nails',
  [
    {
      id: '1/2 in board and 3/4 in into the wood',
      inputs: 0.5 * INCH,
      expected: 1.25 * INCH,
      tolerance: 0,
      source: 'US Navy training manual 14044, fasteners',
      how: 'read',
    },
  ],
  (board) => {
    const into = ruleValue(ircUs, 'fixing.embedment', { fixing: 'nail' }).value as number;
    const rules = withRules(ircUs, { 'fixing.embedment': into, 'fixing.preferredEmbedment': into });
    return fixingLength({ thicknesses: [board], lining: [], rules, stock: [1, 1.25, 1.375, 1.625].map((x) => x * INCH) })
      .recommended;
  },
);

type Board = Parameters<typeof flexuralStrength>;
const strength = (...[thickness, bearing, method, expected]: [...Board, number]): PublishedRow<Board, number> => ({
  id: `${thickness} ${bearing} ${method}`,
  inputs: [thickness, bearing, method],
  expected,
  tolerance: 0,
  source: 'GA-235 (2010), flexural strength, ga-235-2010, lbf',
  how: 'read',
});

checkPublished(
  'flexural strength of wallboard',
  [
    strength('1/4', 'across', 'A', 50),
    strength('1/4', 'along', 'B', 16),
    strength('3/8', 'across', 'A', 80),
    strength('3/8', 'along', 'A', 30),
    strength('3/8', 'across', 'B', 77),
    strength('3/8', 'along', 'B', 26),
    strength('1/2', 'across', 'A', 110),
    strength('1/2', 'along', 'A', 40),
    strength('1/2', 'across', 'B', 107),
    strength('1/2', 'along', 'B', 36),
    strength('5/8', 'across', 'A', 150),
    strength('5/8', 'along', 'A', 50),
    strength('5/8', 'across', 'B', 147),
    strength('5/8', 'along', 'B', 46),
    strength('3/4', 'across', 'A', 170),
    strength('3/4', 'along', 'B', 56),
  ],
  (inputs) => flexuralStrength(...inputs),
);

describe('the American set', () => {
  it('IRC 2018 table R702.3.6, irc-2018-R702.3.6-capacity (read): 90 lb/ft at 16 in, 70 at 24', () => {
    expect(diaphragmCapacity.rows.map(({ capacity }) => capacity)).toEqual([90, 70]);
  });

  it('serves 400 and 406, 600 and 610 from one row', () => {
    for (const [centres, expected] of [
      [400, 406.4],
      [406.4, 406.4],
      [600, 304.8],
      [610, 304.8],
    ]) {
      const given = { fixing: 'nail', adhesive: true, centres } as const;
      expect(ruleValue(ircUs, 'fixing.field', given).value).toBe(expected);
    }
  });
});
