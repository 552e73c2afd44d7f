import { type Conditions, fixingLength, type RuleKey, ruleSets, ruleValue, type Source, withRules } from 'soffitwright';
import { controlJointAreas } from '../../../src/rules/standards/americanGuidance.js';
import { flexuralStrength } from '../../../src/rules/standards/gypsumAssociation.js';
import {
  diaphragmCapacity,
  diaphragmFixing,
  diaphragmJoints,
  diaphragmReductions,
} from '../../../src/rules/standards/irc2018.js';
import { type Asked, type PublishedRow, type PublishedTable, published, publishedRules } from '../publishedTable.js';

const { ircUs } = ruleSets;
const INCH = 25.4;

/** A rule printed in inches. */
const row = (clause: string, key: RuleKey, given: Conditions, inches: number, source: Source): PublishedRow<Asked, number> => ({
  clause,
  inputs: { key, given },
  expected: inches * INCH,
  tolerance: 1e-9,
  source,
});

const code = (clause: string, standing: 'read' | 'secondary'): Source => ({
  standard: 'International Residential Code',
  edition: '2018',
  clause,
  standing,
});
const BRACING = code('table R702.3.6 note d', 'read');
const TEXTURE = code('table R702.3.5 footnote d, as quoted by a code forum', 'secondary');
const GUIDE: Source = {
  standard: 'Gypsum Association, Using Gypsum Board for Walls and Ceilings',
  clause: 'section III',
  standing: 'read',
};
const NAVY: Source = { standard: 'US Navy training manual 14044', clause: 'fasteners', standing: 'read' };

const wet = (boardThickness: number, inches: number, board?: 'sag-resistant'): PublishedRow<Asked, number> =>
  row(
    'irc-2018-R702.3.5-d',
    'support.centres',
    { boardThickness, orientation: 'across', finish: 'textured', ...(board && { board }) },
    inches,
    TEXTURE,
  );

type Board = Parameters<typeof flexuralStrength>;
/** lbf: supports across the board's length, then along it; method A, then B. */
const STRENGTHS: readonly (readonly [Board[0], readonly [number, number], readonly [number, number]])[] = [
  ['1/4', [50, 20], [46, 16]],
  ['5/16', [65, 25], [62, 21]],
  ['3/8', [80, 30], [77, 26]],
  ['1/2', [110, 40], [107, 36]],
  ['5/8', [150, 50], [147, 46]],
  ['3/4', [170, 60], [167, 56]],
];
const strength = (inputs: Board, expected: number): PublishedRow<Board, number> => ({
  clause: 'ga-235-2010',
  inputs,
  expected,
  tolerance: 0,
  source: { standard: 'GA-235', edition: '2010', clause: 'flexural strength', standing: 'read' },
});

export const unitedStates: readonly PublishedTable[] = [
  publishedRules('printed in inches', ircUs, [
    row('irc-2018-R702.3.5.1', 'fixing.embedment', {}, 5 / 8, code('R702.3.5.1, as quoted in a plan review', 'secondary')),
    row('irc-2018-R702.3.6-spacing', 'fixing.field', { diaphragm: true }, 7, BRACING),
    row('irc-2018-R702.3.6-spacing', 'fixing.boardEnd', { diaphragm: true }, 7, BRACING),
    row('irc-2018-R702.3.6-spacing', 'fixing.perimeter', { diaphragm: true }, 7, BRACING),
    row('irc-2018-R702.3.6-edge', 'fixing.boundEdgeDistance', {}, 3 / 8, BRACING),
    row('irc-2018-R702.3.6-edge', 'fixing.cutEdgeDistance', {}, 3 / 8, BRACING),
    row('ga-guide-III-nails', 'fixing.field', { fixing: 'nail' }, 7, GUIDE),
    row('ga-guide-III-pairs', 'fixing.pairField', {}, 12, GUIDE),
    row('ga-guide-III-distance', 'fixing.pairDistance', {}, 2, GUIDE),
    row('navy-14044-nails', 'fixing.embedment', { fixing: 'nail', shank: 'ringed' }, 3 / 4, NAVY),
    row('navy-14044-nails', 'fixing.embedment', { fixing: 'nail', shank: 'smooth' }, 1, NAVY),
    row('astm-c840-20.3.3', 'movementJoint.maximumRun', {}, 50 * 12, {
      standard: 'ASTM C840',
      clause: '20.3.3, as quoted by a trade association',
      standing: 'secondary',
    }),
    wet(12.7, 16),
    wet(12.7, 24, 'sag-resistant'),
    wet(15.9, 24),
  ]),
  published<number, number | null>({
    title: 'nail for a board of this thickness, mm',
    rows: [
      {
        clause: 'navy-14044-nails',
        what: '1/2 in board and 3/4 in into the wood: 1 1/4 in',
        inputs: 0.5 * INCH,
        expected: 1.25 * INCH,
        tolerance: 0,
        source: NAVY,
      },
    ],
    compute: (board) => {
      const into = ruleValue(ircUs, 'fixing.embedment', { fixing: 'nail' }).value as number;
      const rules = withRules(ircUs, { 'fixing.embedment': into, 'fixing.preferredEmbedment': into });
      return fixingLength({ thicknesses: [board], lining: [], rules, stock: [1, 1.25, 1.375, 1.625].map((x) => x * INCH) })
        .recommended;
    },
  }),
  published({
    title: 'flexural strength of wallboard, lbf',
    rows: STRENGTHS.flatMap(([thickness, a, b]) => [
      strength([thickness, 'across', 'A'], a[0]),
      strength([thickness, 'along', 'A'], a[1]),
      strength([thickness, 'across', 'B'], b[0]),
      strength([thickness, 'along', 'B'], b[1]),
    ]),
    compute: (inputs) => flexuralStrength(...inputs),
  }),
  published({
    title: 'flexural strength of wallboard, N, as the same table prints it, cut off or rounded',
    rows: [
      { ...strength(['1/2', 'across', 'B'], 476), tolerance: 1 },
      { ...strength(['1/2', 'along', 'B'], 160), tolerance: 1 },
      { ...strength(['5/8', 'across', 'B'], 654), tolerance: 1 },
      { ...strength(['5/8', 'along', 'B'], 205), tolerance: 1 },
    ],
    compute: (inputs) => flexuralStrength(...inputs) * 4.4482216,
  }),
  published<() => unknown, unknown>({
    title: 'ceilings that brace the building, and control joints',
    rows: [
      {
        clause: diaphragmCapacity.id,
        what: 'lb/ft at 16 and at 24 in',
        inputs: () => diaphragmCapacity.rows.map(({ capacity }) => capacity),
        expected: [90, 70],
        tolerance: 0,
        source: code('table R702.3.6', 'read'),
      },
      {
        clause: diaphragmReductions.id,
        what: 'a quarter, and half',
        inputs: () => [diaphragmReductions.normalLoading, diaphragmReductions.seismic],
        expected: [0.25, 0.5],
        tolerance: 0,
        source: code('table R702.3.6 notes a and b', 'read'),
      },
      {
        clause: diaphragmFixing.id,
        what: 'nail 1 5/8 in, shank 0.086, head 15/64; screw 1 1/4',
        inputs: () => {
          const { nailLength, nailShank, nailHead, screwLength } = diaphragmFixing;
          return [nailLength, nailShank, nailHead, screwLength];
        },
        expected: [1 + 5 / 8, 0.086, 15 / 64, 1 + 1 / 4],
        tolerance: 0,
        source: code('table R702.3.6 notes c and d', 'read'),
      },
      {
        clause: diaphragmJoints.id,
        what: 'joists shared by butt joints of neighbouring courses; length to width',
        inputs: () => [diaphragmJoints.sharedJoists, diaphragmJoints.greatestLengthToWidth],
        expected: [0, 1.5],
        tolerance: 0,
        source: code('R702.3.6, as quoted in a plan review', 'secondary'),
      },
      {
        clause: controlJointAreas.id,
        what: 'ft2, its perimeter free to move or not',
        inputs: () => [controlJointAreas.withRelief, controlJointAreas.withoutRelief],
        expected: [2500, 900],
        tolerance: 0,
        source: { standard: 'ASTM C840', clause: '20.3.3, 20.3.4, as quoted by a trade association', standing: 'secondary' },
      },
    ],
    compute: (inputs) => inputs(),
  }),
];
