import { type Conditions, type RuleKey, ruleSets, type Source } from 'soffitwright';
import { furring, insulatedBoard, nailSize, taping } from '../../../src/rules/standards/nbc2023alberta.js';
import { type Asked, type PublishedRow, type PublishedTable, published, publishedRules } from '../publishedTable.js';

const at = (clause: string): Source => ({
  standard: 'National Building Code, Alberta edition',
  edition: '2023',
  clause,
  standing: 'read',
});
const AGENCY = 'National Building Code, as restated by the federal housing agency';

const row = (
  clause: string,
  key: RuleKey,
  given: Conditions,
  expected: number | null,
  source: Source,
): PublishedRow<Asked, number | null> => ({ clause: `nbc-${clause}`, inputs: { key, given }, expected, tolerance: 0, source });

const across = 'across';
const along = 'along';
const textured = 'textured';
const painted = 'painted';
const board = 'sag-resistant';
/** Millimetres on centre, or `null` for "not permitted". */
const support = (given: Conditions, expected: number | null) =>
  row('9.29.5.3', 'support.centres', given, expected, at('table 9.29.5.3'));
const into = (given: Conditions, expected: number) => row('9.29.5.5', 'fixing.embedment', given, expected, at('table 9.29.5.5'));

export const canada: readonly PublishedTable[] = [
  publishedRules('support spacing under ceilings', ruleSets.nbcCanada, [
    support({ boardThickness: 9.5, orientation: along, finish: painted }, null),
    support({ boardThickness: 9.5, orientation: along, finish: textured }, null),
    support({ boardThickness: 9.5, orientation: across, finish: painted }, 400),
    support({ boardThickness: 9.5, orientation: across, finish: textured }, null),
    support({ boardThickness: 12.7, orientation: along, finish: painted }, 400),
    support({ boardThickness: 12.7, orientation: along, finish: textured }, null),
    support({ boardThickness: 12.7, orientation: across, finish: painted }, 600),
    support({ boardThickness: 12.7, orientation: across, finish: textured }, 400),
    support({ boardThickness: 15.9, orientation: along, finish: painted }, 400),
    support({ boardThickness: 15.9, orientation: along, finish: textured }, null),
    support({ boardThickness: 15.9, orientation: across, finish: painted }, 600),
    support({ boardThickness: 15.9, orientation: across, finish: textured }, 600),
    support({ boardThickness: 12.7, orientation: along, board, finish: painted }, 400),
    support({ boardThickness: 12.7, orientation: along, board, finish: textured }, null),
    support({ boardThickness: 12.7, orientation: across, board, finish: painted }, 600),
    support({ boardThickness: 12.7, orientation: across, board, finish: textured }, 600),
  ]),
  publishedRules('penetration into wood, ceilings', ruleSets.nbcCanada, [
    into({ fixing: 'nail' }, 20),
    into({ fixing: 'screw' }, 15),
    into({ fixing: 'nail', fireRating: 45 }, 30),
    into({ fixing: 'screw', fireRating: 45 }, 30),
    into({ fixing: 'nail', fireRating: 60 }, 45),
    into({ fixing: 'screw', fireRating: 60 }, 45),
    into({ fixing: 'nail', fireRating: 90 }, 60),
    into({ fixing: 'screw', fireRating: 90 }, 60),
  ]),
  publishedRules('spacing and edges', ruleSets.nbcCanada, [
    row('9.29.5.8-1', 'fixing.field', { fixing: 'nail' }, 180, at('9.29.5.8 (1)')),
    row('9.29.5.8-1', 'fixing.perimeter', { fixing: 'nail' }, 180, at('9.29.5.8 (1)')),
    row('9.29.5.8-1-pairs', 'fixing.pairField', {}, 300, at('9.29.5.8 (1)')),
    row('9.29.5.8-1-distance', 'fixing.pairDistance', {}, 50, at('9.29.5.8 (1)')),
    row('9.29.5.9-1', 'fixing.field', { fixing: 'screw' }, 300, {
      standard: AGENCY,
      clause: '9.29.5.9 (1)',
      standing: 'secondary',
    }),
    row('9.29.5.9-6', 'fixing.boundEdgeDistance', {}, 10, at('9.29.5.8 (6), 9.29.5.9 (6)')),
    row('9.29.5.9-6', 'fixing.cutEdgeDistance', {}, 10, at('9.29.5.8 (6), 9.29.5.9 (6)')),
  ]),
  published<number, unknown>({
    title: 'furring at these centres, mm: over continuous support, supports at 400, supports at 600',
    rows: [
      [
        300,
        [
          [19, 38],
          [19, 38],
          [19, 64],
        ],
      ],
      [
        400,
        [
          [19, 38],
          [19, 38],
          [19, 64],
        ],
      ],
      [
        600,
        [
          [19, 38],
          [19, 64],
          [19, 89],
        ],
      ],
    ].map(([inputs, expected]) => ({
      clause: furring.id,
      inputs: inputs as number,
      expected,
      tolerance: 0,
      source: at('table 9.29.3.1'),
    })),
    compute: (wanted) =>
      furring.rows
        .filter(({ centres }) => centres === wanted)
        .flatMap(({ continuous, supports400, supports600 }) => [continuous, supports400, supports600]),
  }),
  published<() => unknown, unknown>({
    title: 'board under insulation, warmth, nails',
    rows: [
      {
        clause: insulatedBoard.id,
        what: 'at least, mm',
        inputs: () => insulatedBoard.thickness,
        expected: 12.7,
        tolerance: 0,
        source: at('9.29.5.4'),
      },
      {
        clause: taping.id,
        what: 'at least 10 C for 48 h',
        inputs: () => [taping.celsius, taping.hours],
        expected: [10, 48],
        tolerance: 0,
        source: at('9.29.5.10'),
      },
      {
        clause: nailSize.id,
        what: 'shank and head, mm',
        inputs: () => [nailSize.shank, nailSize.head],
        expected: [2.3, 5.5],
        tolerance: 0,
        source: { standard: AGENCY, clause: 'nails', standing: 'secondary' },
      },
    ],
    compute: (inputs) => inputs(),
  }),
];
