import { fixingCapacity, type Source, type StrengthClass } from 'soffitwright';
import { greatestReaction } from '../../../src/rules/standards/beams.js';
import { nailPull } from '../../../src/rules/standards/boardTests.js';
import { characteristicDensity } from '../../../src/rules/standards/en338of2016.js';
import {
  axialDistances,
  declaredWithdrawal,
  diameterFactor,
  effectiveNumber,
  headPullThrough,
  leastThread,
  materialFactor,
  penetrationFactor,
  permanentFactor,
  permanentLoadFactor,
  screwInRange,
  screwWithdrawal,
  smoothNailStrength,
  smoothNailWithdrawal,
  withdrawalStrength,
} from '../../../src/rules/standards/en1995of2008.js';
import { nailWithdrawal, woodScrewWithdrawal } from '../../../src/rules/standards/nds2018.js';
import { allowableShare, nailUltimate, nailUltimateOvenDry, screwUltimate } from '../../../src/rules/standards/woodHandbook.js';
import { type PublishedRow, type PublishedTable, published } from '../publishedTable.js';

const INCH = 25.4;
const NEWTONS_PER_POUND = 4.4482216;

type Row<Expected = number> = PublishedRow<() => Expected, Expected>;
const row = <Expected>(
  clause: string,
  what: string,
  inputs: () => Expected,
  expected: Expected,
  tolerance: number,
  source: Source,
): Row<Expected> => ({ clause, what, inputs, expected, tolerance, source });
const table = <Expected>(title: string, rows: readonly Row<Expected>[]): PublishedTable =>
  published({ title, rows, compute: (inputs) => inputs() });

const ec5 = (clause: string, standing: Source['standing'] = 'secondary'): Source => ({
  standard: 'EN 1995-1-1',
  edition: '2004+A1:2008',
  clause,
  standing,
});
/** d 6, d1 4, l_ef 55, rho_k 350, head 12 at 10.5 N/mm2; nail 3.4, 52 into rho_k 350. */
const worked = (clause: string): Source => ec5(`${clause}, worked in a hand calculation template`);
/** rho_k 385, rho_a 350, f_head 10.5, d_h 10.5, f_ax 11.7, d 9, 100 mm each side, at 45 degrees. */
const notebook = (clause: string): Source => ec5(`${clause}, worked in a notebook of withdrawal`, 'read');
/** Both sides of the notebook's joint are taken along a load at 45 degrees to the screw. */
const ALONG_LOAD = Math.SQRT1_2;

const NAILS: readonly (readonly [d: number, c16: number, c24: number])[] = [
  [2.65, 5.09, 6.49],
  [2.8, 5.38, 6.86],
  [3, 5.77, 7.35],
  [3.1, 5.96, 7.6],
  [3.35, 6.44, 8.21],
  [3.75, 7.21, 9.19],
  [4, 7.69, 9.8],
];
const nailList = ec5('8.3.2 (6) equation 8.25, published list of nail withdrawal', 'read');

const DENSITIES: readonly (readonly [StrengthClass, number])[] = [
  ['C14', 290],
  ['C16', 310],
  ['C18', 320],
  ['C20', 330],
  ['C22', 340],
  ['C24', 350],
  ['C27', 360],
  ['C30', 380],
];

const nds = (clause: string, standing: Source['standing']): Source => ({ standard: 'NDS', edition: '2018', clause, standing });
const SOLVED = nds('12.2.3, solved example E2.1a of its publisher', 'secondary');
const METRIC = nds('12.2.3, metric table of an engineering page on nails', 'read');
const handbook = (clause: string, standing: Source['standing']): Source => ({
  standard: 'Wood Handbook, Forest Products Laboratory',
  clause: `chapter 8, ${clause}`,
  standing,
});
const beam = (standard: string): Source => ({ standard, standing: 'read' });

/** Diameters of a screw, outer and inner, mm, and whether the withdrawal formula is for it. */
const RANGE: readonly (readonly [d: number, d1: number | undefined, inRange: boolean])[] = [
  [6, 4, true],
  [12, 7.2, true],
  [5, 3.2, false],
  [3.5, 2.2, false],
  [4.8, 3, false],
  [13, 8, false],
  [8, 4, false],
  [8, 6.5, false],
  [8, undefined, false],
];

export const capacity: readonly PublishedTable[] = [
  table('a screw in range, and a smooth nail', [
    row('en-1995-1-1-8.39', 'strength, N/mm2', () => withdrawalStrength(6, 55, 350), 15.42, 0.005, worked('8.7.2 equation 8.39')),
    row('en-1995-1-1-8.40', 'k_d', () => diameterFactor(6), 0.75, 0, worked('8.7.2 equation 8.40')),
    row('en-1995-1-1-8.38', 'withdrawal, N', () => screwWithdrawal(6, 55, 350), 3817, 3.8, worked('8.7.2 equation 8.38')),
    row('en-1995-1-1-8.40b', 'head, N', () => headPullThrough(10.5, 12, 350, 350), 1512, 1.5, worked('8.7.2 equation 8.40b')),
    row(
      'en-1995-1-1-8.40b',
      'the head governs: the screw holds, N',
      () => Math.min(screwWithdrawal(6, 55, 350), headPullThrough(10.5, 12, 350, 350)),
      1512,
      1.5,
      worked('8.7.2'),
    ),
    row('en-1995-1-1-8.41', 'ten screws', () => effectiveNumber(10), 7.943, 0.001, worked('8.7.2 (8) equation 8.41')),
    row('en-1995-1-1-8.41', 'two screws', () => effectiveNumber(2), 1.866, 0.001, notebook('8.7.2 (8) equation 8.41')),
    row('en-1995-1-1-8.7.2-3', 'least thread of 6 mm, mm', () => leastThread(6), 36, 0, ec5('8.7.2 (3)')),
    row(
      'en-1995-1-1-8.24',
      'smooth nail 3.4, 52 into rho_k 350, N',
      () => smoothNailWithdrawal(3.4, 52, 350),
      433.2,
      0.43,
      worked('8.3.2 equation 8.24'),
    ),
    row(
      'en-1995-1-1-8.40a',
      'point side, N',
      () => declaredWithdrawal(9, 100, 385, 11.7, 350) * ALONG_LOAD,
      8036,
      8,
      notebook('8.7.2 (5) equation 8.40a'),
    ),
    row(
      'en-1995-1-1-8.40b',
      'head side, N',
      () => (declaredWithdrawal(9, 100, 385, 11.7, 350) + headPullThrough(10.5, 10.5, 385, 350)) * ALONG_LOAD,
      8919,
      9,
      notebook('8.7.2 (6) equation 8.40b'),
    ),
  ]),
  table<unknown>('distances of screws, times their diameter of 6 mm', [
    row(
      'en-1995-1-1-table-8.6',
      'along, across, end, edge, timber',
      () => Object.values(axialDistances(6)).map((each) => each / 6),
      [7, 5, 10, 4, 12],
      0,
      ec5('table 8.6'),
    ),
  ]),
  table(
    'screws that the formula is for: 6 to 12 mm, inner over outer diameter 0.6 to 0.75',
    RANGE.map(([d, d1, inRange]) =>
      row('en-1995-1-1-8.7.2-4', `d ${d}, d1 ${d1}`, () => screwInRange(d, d1), inRange, 0, ec5('8.7.2 (4)')),
    ),
  ),
  table(
    'smooth nails in C16 and C24 over the whole of 12 d, N for each mm',
    NAILS.flatMap(([d, c16, c24]) =>
      (
        [
          ['C16', c16],
          ['C24', c24],
        ] as const
      ).map(([grade, expected]) =>
        row(
          'en-1995-1-1-8.25',
          `${d} mm in ${grade}`,
          () => smoothNailStrength(characteristicDensity(grade)) * d,
          expected,
          0.005,
          nailList,
        ),
      ),
    ),
  ),
  table(
    'characteristic density of a strength class, kg/m3',
    DENSITIES.map(([grade, expected]) =>
      row('en-338-2016-density', grade, () => characteristicDensity(grade), expected, 0, {
        standard: 'EN 338',
        edition: '2016',
        clause: 'characteristic density, from a public transcription',
        standing: 'secondary',
      }),
    ),
  ),
  table('what a short nail keeps of its hold: none below 8 d (threaded 6 d), all from 12 d (8 d)', [
    row('en-1995-1-1-8.3.2-7', 'smooth, just under 8 d', () => penetrationFactor(2.5, 19.9, 'smooth'), 0, 0, ec5('8.3.2 (7)')),
    row('en-1995-1-1-8.3.2-7', 'smooth, 10 d: t/4d - 2', () => penetrationFactor(2.5, 25, 'smooth'), 0.5, 0, ec5('8.3.2 (7)')),
    row('en-1995-1-1-8.3.2-7', 'smooth, 12 d', () => penetrationFactor(2.5, 30, 'smooth'), 1, 0, ec5('8.3.2 (7)')),
    row('en-1995-1-1-8.3.2-7', 'threaded, under 6 d', () => penetrationFactor(2.5, 14.9, 'ringed'), 0, 0, ec5('8.3.2 (7)')),
    row('en-1995-1-1-8.3.2-7', 'threaded, 7 d: t/2d - 3', () => penetrationFactor(2.5, 17.5, 'ringed'), 0.5, 0, ec5('8.3.2 (7)')),
    row('en-1995-1-1-8.3.2-7', 'threaded, 8 d', () => penetrationFactor(2.5, 20, 'ringed'), 1, 0, ec5('8.3.2 (7)')),
  ]),
  table('factors of permanent load', [
    row('en-1995-1-1-3.1', 'k_mod, service class 1', () => permanentFactor(1), 0.6, 0, ec5('table 3.1')),
    row('en-1995-1-1-3.1', 'k_mod, service class 2', () => permanentFactor(2), 0.6, 0, ec5('table 3.1')),
    row('en-1995-1-1-3.1', 'k_mod, service class 3', () => permanentFactor(3), 0.5, 0, ec5('table 3.1')),
    row('en-1995-1-1-2.3', 'gamma_M of connections', () => materialFactor(), 1.3, 0, ec5('table 2.3')),
    row('en-1990-6.10', 'gamma_G', () => permanentLoadFactor(), 1.35, 0, {
      standard: 'EN 1990',
      clause: 'equation 6.10',
      standing: 'secondary',
    }),
  ]),
  table('American allowable withdrawal', [
    row('nds-2018-12.2.3', 'nail 0.131 in, G 0.42, lb/in', () => nailWithdrawal(0.42, 0.131), 20.67, 0.02, SOLVED),
    row(
      'nds-2018-12.2.3',
      'the same, N/m',
      () => (nailWithdrawal(0.42, 0.131) * NEWTONS_PER_POUND * 1000) / INCH,
      3619.31,
      3.6,
      SOLVED,
    ),
    row('nds-2018-12.2.3', '2.5 in less 0.105 in, lb', () => nailWithdrawal(0.42, 0.131) * 2.395, 49.5, 0.05, SOLVED),
    row('nds-2018-12.2.3', 'the same, N', () => nailWithdrawal(0.42, 0.131) * 2.395 * NEWTONS_PER_POUND, 220.2, 0.2, SOLVED),
    row(
      'nds-2018-12.2.2',
      'screw 0.190 in, G 0.45, lb/in; the page cuts 109.65 off',
      () => Math.floor(woodScrewWithdrawal(0.45, 0.19)),
      109,
      0,
      nds('12.2.2, engineering page on wood screws', 'read'),
    ),
    row(
      'nds-2018-12.2.3',
      '20d nail 0.203 in, G 0.45, lb/in',
      () => nailWithdrawal(0.45, 0.203),
      38,
      0.1,
      nds('12.2.3, engineering page on nails', 'read'),
    ),
    ...(
      [
        [20, 1.2, 40.4],
        [50, 2.2, 185],
        [60, 2.5, 252],
        [100, 4.2, 707],
      ] as const
    ).map(([length, d, expected]) =>
      row(
        'nds-2018-12.2.3',
        `${length} x ${d} mm, G 0.5, N`,
        () => nailWithdrawal(0.5, d / INCH) * (length / INCH) * NEWTONS_PER_POUND,
        expected,
        0.0015 * expected,
        METRIC,
      ),
    ),
  ]),
  table('American tests, greatest withdrawal', [
    row(
      'wood-handbook-8-screws',
      'No. 8 (0.164 in), G 0.70, 1 in, lb',
      () => screwUltimate(0.7, 0.164 * INCH, INCH) / NEWTONS_PER_POUND,
      1262,
      1,
      handbook('page quoting 15,700 G^2 D', 'secondary'),
    ),
    row(
      'wood-handbook-8-nails',
      '7,850 in lb and inches is 54.12 in N and mm',
      () => nailUltimate(1, INCH, INCH) / NEWTONS_PER_POUND,
      7850,
      1,
      handbook('engineering page on nails', 'secondary'),
    ),
    row('fpl-technical-note-236', '6,900 on oven-dry volume', () => nailUltimateOvenDry(1, 1), 6900, 0, {
      standard: 'Forest Products Laboratory, Technical Note 236',
      edition: '1958',
      standing: 'read',
    }),
    row('allowable-share-of-nails', 'a fifth', () => allowableShare(), 0.2, 0, {
      standard: 'engineering page on nails, metric table',
      clause: 'allowable over greatest load',
      standing: 'secondary',
    }),
  ]),
  table('share of a bay on the most loaded joist', [
    row(
      'continuous-beam-reactions',
      'two bays',
      () => greatestReaction(2),
      1.25,
      0,
      beam('Reference table, beam on three supports'),
    ),
    row('continuous-beam-reactions', 'three bays', () => greatestReaction(3), 1.1, 0, beam('Reference table, three-span beam')),
  ]),
  table('pull-through', [
    row('astm-c36-nail-pull', '77 lbf in 1/2 in board, N', () => nailPull.load, 77 * NEWTONS_PER_POUND, 1, {
      standard: 'ASTM C36',
      clause: 'nail pull by ASTM C473, as quoted in an industry note',
      standing: 'secondary',
    }),
  ]),
  table<unknown>('smooth nails and permanent load', [
    row(
      'en-1995-1-1-8.3.2-1',
      'smooth nails carry none, ringed ones by their declared strength do',
      () => [nailCarries('smooth'), nailCarries('ringed')],
      [false, true],
      0,
      ec5('8.3.2 (1)', 'read'),
    ),
  ]),
];

function nailCarries(shank: 'smooth' | 'ringed'): boolean {
  const { capacity: held } = fixingCapacity({
    fixing: { kind: 'nail', diameter: 2.65, shank, embedment: 30, withdrawal: { strength: 5, density: 350 } },
    timber: { grade: 'C24' },
    hungMassPerArea: 10,
    joistSpacing: 400,
    fixingSpacing: 150,
  });
  return held > 0;
}
