import { type Conditions, type RuleKey, ruleSets, type Source } from 'soffitwright';
import { faceWidth, flatness, timberMoisture } from '../../../src/rules/standards/asNzs2589of2017.js';
import { diaphragmSheet } from '../../../src/rules/standards/nzs3604of2011.js';
import { type Asked, type PublishedRow, type PublishedTable, published, publishedRules } from '../publishedTable.js';

const row = (clause: string, key: RuleKey, given: Conditions, expected: number, source: Source): PublishedRow<Asked, number> => ({
  clause,
  inputs: { key, given },
  expected,
  tolerance: 0,
  source,
});

const NZS: Source = { standard: 'NZS 3604, as restated by the standards body', edition: '2011', standing: 'read' };
const PAGE: Source = {
  standard: 'AS/NZS 2589',
  edition: '2017',
  clause: 'as restated by an Australian trade page',
  standing: 'secondary',
};
const at = (clause: string, standing: 'read' | 'secondary'): Source => ({
  standard: 'AS/NZS 2589',
  edition: '2017',
  clause,
  standing,
});
const bracing = { diaphragm: true };

export const australasia: readonly PublishedTable[] = [
  publishedRules('spacing, edges and movement joints', ruleSets.asNzs, [
    row('nzs-3604-2011-edges', 'fixing.boardEnd', bracing, 150, NZS),
    row('nzs-3604-2011-edges', 'fixing.perimeter', bracing, 150, NZS),
    row('nzs-3604-2011-field', 'fixing.field', bracing, 300, NZS),
    row('nzs-3604-2011-edge-distance', 'fixing.boundEdgeDistance', bracing, 10, NZS),
    row('nzs-3604-2011-edge-distance', 'fixing.cutEdgeDistance', bracing, 10, NZS),
    row('as-nzs-2589-2017-edges', 'fixing.boundEdgeDistance', {}, 10, PAGE),
    row('as-nzs-2589-2017-edges', 'fixing.cutEdgeDistance', {}, 10, PAGE),
    row('as-nzs-2589-2017-edges-greatest', 'fixing.floatingEdgeDistance', {}, 16, PAGE),
    row('as-nzs-2589-2017-3.4', 'movementJoint.maximumRun', {}, 12_000, {
      standard: 'Australian public works specification of buildings',
      edition: '2009',
      clause: '9.8',
      standing: 'secondary',
    }),
  ]),
  published<() => unknown, unknown>({
    title: 'timber and sheets',
    rows: [
      {
        clause: faceWidth.id,
        what: 'mm of face under a screwed butt joint, and elsewhere',
        inputs: () => [faceWidth.buttJoint, faceWidth.other],
        expected: [32, 30],
        tolerance: 0,
        source: at('2.7.2 (a)', 'read'),
      },
      {
        clause: timberMoisture.id,
        what: '%: below, in Australia; at most, in New Zealand',
        inputs: () => [timberMoisture.australiaBelow, timberMoisture.newZealand],
        expected: [15, 18],
        tolerance: 0,
        source: at('2.6.2, 2.6.3', 'read'),
      },
      {
        clause: flatness.id,
        what: 'mm under a straight edge of mm',
        inputs: () => [flatness.gap, flatness.straightEdge],
        expected: [4, 1800],
        tolerance: 0,
        source: at('4.2.2, as summarised by an inspector', 'secondary'),
      },
      {
        clause: diaphragmSheet.id,
        what: 'at least 10 mm, 600 kg/m3, 1800 x 900; at most 7.5 m, twice as long as wide, 15 degrees',
        inputs: () => {
          const { thickness, density, sheetLength, sheetWidth, ...most } = diaphragmSheet;
          const { greatestLength, greatestLengthToWidth, greatestSlope } = most;
          return [thickness, density, sheetLength, sheetWidth, greatestLength, greatestLengthToWidth, greatestSlope];
        },
        expected: [10, 600, 1800, 900, 7500, 2, 15],
        tolerance: 0,
        source: NZS,
      },
    ],
    compute: (inputs) => inputs(),
  }),
];
