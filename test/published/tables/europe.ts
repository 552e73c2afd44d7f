import { ruleSets, ruleTable, type Source } from 'soffitwright';
import { outerDiameter, screwLengths, threadLength } from '../../../src/rules/standards/din18182of1987.js';
import { boardTolerances, breakingLoad, usualSizes } from '../../../src/rules/standards/en520of2009.js';
import { fixingCentres } from '../../../src/rules/standards/eu2006of673.js';
import { type PublishedRow, type PublishedTable, published } from '../publishedTable.js';

const BREAKING: Source = {
  standard: 'EN 520',
  edition: '2004+A1:2009',
  clause: 'least breaking loads, as printed by a trade association',
  standing: 'secondary',
};
type Load = Parameters<typeof breakingLoad>;
const load = (...[type, thickness, direction, expected]: [...Load, number]): PublishedRow<Load, number | undefined> => ({
  clause: 'en-520-2009-breaking-load',
  inputs: [type, thickness, direction],
  expected,
  tolerance: 0,
  source: BREAKING,
});

const SIZES: Source = {
  standard: 'EN 520',
  edition: '2004+A1:2009',
  clause: '4.9, read in a damaged scan',
  standing: 'secondary',
};
const size = <Expected>(what: string, inputs: () => Expected, expected: Expected, clause = 'en-520-2009-4.9') => ({
  clause,
  what,
  inputs,
  expected,
  tolerance: 0,
  source: SIZES,
});

const SCREWS: Source = {
  standard: 'DIN 18182-2',
  edition: '1987',
  clause: 'table of dimensions, read in a scan',
  standing: 'read',
};
const COLUMNS: Source = {
  ...SCREWS,
  clause: 'table of dimensions, read in a scan whose columns were inferred',
  standing: 'secondary',
};

export const europe: readonly PublishedTable[] = [
  published({
    title: 'least breaking load of a board of 300 over 350, N',
    rows: [
      load('common', 9.5, 'across', 160),
      load('common', 9.5, 'along', 400),
      load('common', 12.5, 'across', 210),
      load('common', 12.5, 'along', 550),
      load('common', 15, 'across', 250),
      load('common', 15, 'along', 650),
      load('common', 20, 'across', 16.8 * 20),
      load('common', 20, 'along', 43 * 20),
      load('R', 12.5, 'across', 300),
      load('R', 12.5, 'along', 725),
      load('R', 15, 'along', 870),
      load('R', 20, 'across', 24 * 20),
      load('R', 20, 'along', 58 * 20),
      load('P', 9.5, 'across', 125),
      load('P', 9.5, 'along', 180),
      load('P', 12.5, 'across', 165),
      load('P', 12.5, 'along', 235),
    ],
    compute: (inputs) => breakingLoad(...inputs),
  }),
  published({
    title: 'type R of 15 mm across, N, in the text of the standard as another page gives it',
    rows: [
      {
        clause: 'en-520-2009-breaking-load',
        inputs: ['R', 15, 'across'],
        expected: 360,
        tolerance: 0,
        source: { standard: 'EN 520', edition: '2004+A1:2009', clause: 'text on a third-party page', standing: 'secondary' },
      },
    ],
    compute: (inputs: Load) => breakingLoad(...inputs),
  }),
  published<() => unknown, unknown>({
    title: 'tolerances and sizes of boards, mm',
    rows: [
      size('thickness below 18 mm', () => boardTolerances(12.5).thickness, 0.5),
      size('spread of readings of thickness', () => boardTolerances(12.5).thicknessSpread, 0.8),
      size('length, shorter', () => boardTolerances(12.5).shorter, 5),
      size('out of square, for each m of width', () => boardTolerances(12.5).outOfSquare, 2.5),
      size('usual widths', () => usualSizes.widths, [600, 625, 900, 1200, 1250], usualSizes.id),
      size('usual thicknesses', () => usualSizes.thicknesses, [9.5, 12.5, 15], usualSizes.id),
      size('thinnest', () => usualSizes.thinnest, 6, usualSizes.id),
      size('widths of plaster base board', () => usualSizes.plasterBaseWidths, [400, 600, 900, 1200], usualSizes.id),
      size('lengths of plaster base board', () => usualSizes.plasterBaseLengths, [1200, 1500, 1800, 2000], usualSizes.id),
    ],
    compute: (inputs) => inputs(),
  }),
  published<number, readonly [number, number] | undefined>({
    title: 'least and greatest length of a screw, mm',
    rows: (
      [
        [25, [24, 26.1]],
        [35, [33.8, 36.3]],
        [45, [43.8, 46.3]],
        [55, [53.5, 56.3]],
      ] as const
    ).map(([inputs, expected]) => ({ clause: 'din-18182-2-1987-length', inputs, expected, tolerance: 0, source: SCREWS })),
    compute: (nominal) => screwLengths(nominal),
  }),
  published<number, number | undefined>({
    title: 'thread of a screw of this length, mm',
    rows: (
      [
        [25, 16],
        [35, 26],
        [45, 30],
      ] as const
    ).map(([inputs, expected]) => ({ clause: 'din-18182-2-1987-thread', inputs, expected, tolerance: 0, source: COLUMNS })),
    compute: (nominal) => threadLength(nominal),
  }),
  published<null, readonly [number, number]>({
    title: 'outer diameter of a screw of 3.5 nominal, mm',
    rows: [{ clause: 'din-18182-2-1987-diameter', inputs: null, expected: [3.4, 3.7], tolerance: 0, source: COLUMNS }],
    compute: () => outerDiameter(),
  }),
  published<null, number>({
    title: 'fixings along every support, for the class of reaction to fire, mm',
    rows: [
      {
        clause: 'eu-2006-673',
        what: 'at most 300',
        inputs: null,
        expected: 300,
        tolerance: 0,
        source: { standard: 'Commission Decision 2006/673/EC', standing: 'secondary' },
      },
    ],
    compute: () => fixingCentres.rows[0].value as number,
  }),
  published<null, boolean>({
    title: 'every European set keeps it, screws and nails',
    rows: [
      {
        clause: 'eu-2006-673',
        inputs: null,
        expected: true,
        tolerance: null,
        source: { standard: 'Commission Decision 2006/673/EC', standing: 'secondary' },
      },
    ],
    compute: () =>
      [ruleSets.uk, ruleSets.ukOverSoundLining, ruleSets.din].every((set) =>
        ruleTable(set, 'fixing.field').every(({ value }) => value !== null && value <= 300),
      ),
  }),
];
