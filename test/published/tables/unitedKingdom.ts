import { type Conditions, isInputError, type RuleKey, ruleSets, ruleValue, type Source } from 'soffitwright';
import { timberMoisture } from '../../../src/rules/standards/nhbc2022.js';
import { localAuthorityLimits, warrantyLimits } from '../../../src/rules/standards/notchesAndHoles.js';
import { type Asked, type PublishedRow, type PublishedTable, published, publishedRules } from '../publishedTable.js';

const { uk } = ruleSets;

const WARRANTY: Source = { standard: 'NHBC Standards', edition: '2022', clause: '9.2.4 table 5', standing: 'read' };
const centresOf = (boardThickness: number, noggings: boolean, expected: number): PublishedRow<Asked, number> => ({
  clause: 'nhbc-2022-9.2.4-table-5',
  inputs: { key: 'support.centres', given: { boardThickness, orientation: 'across', noggings } },
  expected,
  tolerance: 0,
  source: WARRANTY,
});

/** A board over joists at these centres, mm. */
interface Over {
  readonly thickness: number;
  readonly centres: number;
}
type Allowed = 'without noggings' | 'with noggings' | 'not allowed';

const over = (thickness: number, centres: number, expected: Allowed): PublishedRow<Over, Allowed> => ({
  clause: 'nhbc-2022-9.2.4-table-5',
  inputs: { thickness, centres },
  expected,
  tolerance: null,
  source: WARRANTY,
});

function allowed({ thickness, centres }: Over): Allowed {
  const limit = (noggings: boolean): number => {
    try {
      return ruleValue(uk, 'support.centres', { boardThickness: thickness, orientation: 'across', noggings }).value ?? 0;
    } catch (error) {
      if (isInputError(error)) return 0;
      throw error;
    }
  };
  return centres <= limit(false) ? 'without noggings' : centres <= limit(true) ? 'with noggings' : 'not allowed';
}

const specified = (
  clause: string,
  key: RuleKey,
  given: Conditions,
  expected: number,
  at: string,
): PublishedRow<Asked, number> => ({
  clause: `specification-2014-${clause}`,
  inputs: { key, given },
  expected,
  tolerance: 0,
  source: {
    standard: 'National Building Specification generic clauses, as quoted in a project specification',
    edition: '2014',
    clause: at,
    standing: 'secondary',
  },
});

const LOCAL: Source = {
  standard: 'Local authority building control guidance on notches and holes, quoting the span tables to Eurocode 5',
  standing: 'read',
};
const NOTCHES: Source = { standard: 'NHBC Standards', edition: '2020', clause: '6.4.18 table 6', standing: 'read' };

/** Depth of a joist in mm: notch, hole, bottom of the largest hole. */
const depths = (
  clause: string,
  source: Source,
  rows: readonly (readonly [depth: number, expected: readonly [notch: number, hole: number] | null])[],
): PublishedRow<number, readonly [number, number] | null>[] =>
  rows.map(([inputs, expected]) => ({ clause, inputs, expected, tolerance: 0, source }));

export const unitedKingdom: readonly PublishedTable[] = [
  publishedRules('greatest joist centres', uk, [
    centresOf(9.5, false, 400),
    centresOf(9.5, true, 450),
    centresOf(12.5, false, 450),
    centresOf(12.5, true, 600),
    centresOf(15, false, 600),
  ]),
  published({
    title: 'board thickness, joist centres and noggings between them',
    rows: [
      over(9.5, 400, 'without noggings'),
      over(9.5, 450, 'with noggings'),
      over(9.5, 600, 'not allowed'),
      over(12.5, 400, 'without noggings'),
      over(12.5, 450, 'without noggings'),
      over(12.5, 600, 'with noggings'),
      over(12.5, 625, 'not allowed'),
      over(15, 600, 'without noggings'),
      over(15, 625, 'not allowed'),
    ],
    compute: allowed,
  }),
  publishedRules('spacing, edge distances and gaps', uk, [
    specified('K10-610', 'fixing.field', {}, 230, 'K10 610, M20 610'),
    specified('K10-610', 'fixing.field', { fixing: 'nail' }, 150, 'K10 610, M20 610'),
    specified('K10-590', 'fixing.boardEnd', {}, 150, 'K10 590'),
    specified('K10-590', 'fixing.perimeter', {}, 150, 'K10 590'),
    specified('M20-610-bound', 'fixing.boundEdgeDistance', {}, 10, 'K10 610, M20 610'),
    specified('M20-610-cut', 'fixing.cutEdgeDistance', {}, 13, 'K10 610, M20 610'),
    specified('M20-610-timber', 'fixing.timberEdgeDistance', {}, 6, 'K10 610, M20 610'),
    specified('M20-612', 'joint.gap', {}, 3, 'M20 612'),
  ]),
  publishedRules('how far a cable is from the underside of a joist, less the margin kept from it', uk, [
    {
      clause: 'bs-7671-2008-522.6.5',
      what: '50 mm, of which a margin of 5 is kept',
      inputs: { key: 'fixing.maximumEmbedment', given: {} },
      expected: 50 - 5,
      tolerance: 0,
      source: {
        standard: 'BS 7671, as quoted in an electrical industry pocket guide',
        edition: '2008',
        clause: '522.6.5',
        standing: 'secondary',
      },
    },
  ]),
  published<number, readonly [number, number] | null>({
    title: 'notch and hole in a joist of this depth, local authority guidance',
    rows: depths('labc-notches-and-holes', LOCAL, [
      [200, [25, 50]],
      [300, [35, 65]],
    ]),
    compute: (depth) => {
      const { notchDepth, holeDiameter } = localAuthorityLimits(depth);
      return [notchDepth, holeDiameter];
    },
  }),
  published<number, readonly [number, number] | null>({
    title: 'notch and hole in a joist of this depth, warranty standard; deeper than 250 wants an engineer',
    rows: depths('nhbc-2020-6.4.18-table-6', NOTCHES, [
      [200, [30, 50]],
      [250, [37.5, 62.5]],
      [251, null],
    ]),
    compute: (depth) => {
      const limits = warrantyLimits(depth);
      return limits === undefined ? null : [limits.notchDepth, limits.holeDiameter];
    },
  }),
  published({
    title: 'moisture of the timber before lining, %',
    rows: [
      {
        clause: 'nhbc-current-9.2.4-moisture',
        what: '20 or less',
        inputs: null,
        expected: 20,
        tolerance: 0,
        source: { standard: 'NHBC Standards', edition: 'current, undated', clause: '9.2.4', standing: 'read' },
      },
    ],
    compute: () => timberMoisture.percent as number,
  }),
];
