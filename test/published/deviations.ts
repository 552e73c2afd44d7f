import {
  bearing,
  checkStagger,
  fixingCapacity,
  fixingRequirements,
  type RuleKey,
  type RuleSet,
  ruleSets,
  ruleTable,
  ruleValue,
  type Source,
} from 'soffitwright';
import { breakingLoad } from '../../src/rules/standards/en520of2009.js';
import { woodScrewWithdrawal } from '../../src/rules/standards/nds2018.js';
import { allowableShare } from '../../src/rules/standards/woodHandbook.js';
import { cited } from './publishedTable.js';

/** Where the library knowingly does otherwise than a document says. */
export interface Deviation {
  readonly about: string;
  /** As the document has it. */
  readonly published: string;
  readonly source: Source;
  /** What the library has, taken from it when asked. */
  readonly library: () => string;
  /** What that is expected to be; never what was published. */
  readonly ours: string;
  readonly reason: string;
}

const { uk, ukOverSoundLining, nbcCanada, ircUs, din } = ruleSets;

const as = (standing: Source['standing'], standard: string, edition: string | undefined, clause: string | undefined): Source => ({
  standard,
  ...(edition !== undefined && { edition }),
  ...(clause !== undefined && { clause }),
  standing,
});

const value = (set: RuleSet, key: RuleKey): number => ruleValue(set, key).value as number;

const SPECIFICATION = 'National Building Specification generic clauses';
const WARRANTY = as('read', 'NHBC Standards', '2022', '9.2.4 table 5');
const BREAKING = as('secondary', 'EN 520', '2004+A1:2009', 'least breaking loads, as printed by a trade association');
const EDGES = as('secondary', SPECIFICATION, '2014', 'K10 610, M20 610');

export const deviations: readonly Deviation[] = [
  {
    about: 'screws at board ends and walls',
    published: '150, must hold, to metal framing',
    source: as('secondary', SPECIFICATION, '2014', 'K10 590'),
    library: () => {
      const { value: spacing, level } = ruleValue(uk, 'fixing.boardEnd');
      return `${spacing}, ${level} hold, to timber`;
    },
    ours: '150, should hold, to timber',
    reason:
      'The clause is for metal framing. On timber the same document gives one spacing, 230, so that closer ends are advice.',
  },
  {
    about: 'gap at a butt joint',
    published: 'at most 3',
    source: as('secondary', SPECIFICATION, '2014', 'M20 612'),
    library: () => `at most ${ruleValue(uk, 'joint.gap').range?.greatest}`,
    ours: 'at most 5',
    reason:
      'Boards come up to 5 short (EN 520). One that does is used whole and its gap filled: common practice. 3 is what is aimed at.',
  },
  {
    about: '9.5 board over joists at 450, no noggings between them',
    published: 'not allowed without noggings',
    source: WARRANTY,
    library: () => {
      const given = { boardThickness: 9.5, orientation: 'across', noggings: false } as const;
      return `${ruleValue(ukOverSoundLining, 'support.centres', given).value} allowed in ukOverSoundLining`;
    },
    ours: '450 allowed in ukOverSoundLining',
    reason:
      'Common practice over a sound old ceiling, to save weight. Only in that set, whose notes say so; `uk` follows the table.',
  },
  {
    about: 'table of joist centres',
    published: 'split into walls and ceilings',
    source: as('read', 'NHBC Standards', 'current, undated', '9.2.4 tables 5 and 6'),
    library: () => `one table, edition ${ruleTable(uk, 'support.centres')[0].source.edition}`,
    ours: 'one table, edition 2022',
    reason: 'Of the newer ceiling table only the 9.5 rows could be read, and they agree. The others stand as in 2022.',
  },
  {
    about: 'board of type R, 15 mm, breaking load across',
    published: '600 N',
    source: BREAKING,
    library: () => `${breakingLoad('R', 15, 'across')} N`,
    ours: '360 N',
    reason:
      'A misprint: 24 x 15 is 360, 24 x 12.5 is exactly the 300 printed beside it, and another copy of the standard has 360.',
  },
  {
    about: 'board of 12.5, breaking load along, by the formula for other thicknesses',
    published: '537.5 N',
    source: BREAKING,
    library: () => `${breakingLoad('common', 12.5, 'along')} N`,
    ours: '550 N',
    reason: 'The standard has both. Where its table has a row, the table has precedence over the formula of 43 x thickness.',
  },
  {
    about: 'cables in joists',
    published: '50 mm from the underside of a joist',
    source: as('secondary', 'BS 7671', '2008', '522.6.5'),
    library: () => `${value(uk, 'fixing.maximumEmbedment')} mm`,
    ours: '45 mm',
    reason: 'A margin of 5 is kept from a cable that lies just where it may: common practice.',
  },
  {
    about: 'distance of a screw from the edge of the timber, Canada, United States, Germany',
    published: 'no figure',
    source: as('read', 'National Building Code, Alberta edition', '2023', '9.29.5'),
    library: () => [nbcCanada, ircUs, din].map((set) => value(set, 'fixing.timberEdgeDistance')).join(', '),
    ours: '6, 6, 6',
    reason: 'Borrowed from the UK clauses, whose source each value names: without one, a screw might be set on the very edge.',
  },
  {
    about: 'joist centres printed as 400 and 600',
    published: '400 and 600 mm',
    source: as('read', 'National Building Code, Alberta edition', '2023', 'table 9.29.5.3'),
    library: () =>
      `${[...new Set(ruleTable(nbcCanada, 'support.centres').map(({ range }) => range?.greatest))].sort().join(' and ')} mm`,
    ours: '406.4 and 610 mm',
    reason: 'The metric names of 16 and 24 in. Taken to the letter they would refuse joists at 16 and 24 in.',
  },
  {
    about: 'wet finish on a ceiling board in Canada and the United States',
    published: 'water-based texture finish',
    source: as('read', 'National Building Code, Alberta edition', '2023', 'table 9.29.5.3'),
    library: () => {
      const board = { boardThickness: 12.7, boardWidth: 1200, boardLength: 2400, joistSpacing: 400 };
      const of = (finish: 'skim' | 'tape') => fixingRequirements({ ...board, rules: nbcCanada, finish }).requirements[0].value;
      return `plaster too: 12.7 board at ${of('skim')} under a skim coat, at ${of('tape')} taped`;
    },
    ours: 'plaster too: 12.7 board at 400 under a skim coat, at 600 taped',
    reason:
      'A skim coat wets the board at least as long as a texture does. The finding is a warning, since the words are of texture.',
  },
  {
    about: '9.5 board under a ceiling in Canada',
    published: 'walls only, to 400',
    source: as(
      'secondary',
      'National Building Code, as restated by the federal housing agency',
      undefined,
      'spacing of supports',
    ),
    library: () => {
      const given = { boardThickness: 9.5, orientation: 'across' } as const;
      return `ceilings too, across joists at ${ruleValue(nbcCanada, 'support.centres', given).value}, painted`;
    },
    ours: 'ceilings too, across joists at 400, painted',
    reason: 'The table of the code itself, which was read, has the row for ceilings; the agency leaves it out.',
  },
  {
    about: 'over-boarding in Canada',
    published: 'one layer, fixed to wood',
    source: as('read', 'National Building Code, Alberta edition', '2023', '9.29.5.1 (1)'),
    library: () =>
      nbcCanada.notes?.some((note) => note.includes('over-boarding lies outside it')) ? 'any layer, and says so' : '',
    ours: 'any layer, and says so',
    reason: 'The article does not reach over-boarding. Its figures are the nearest there are, and the notes of the set say it.',
  },
  {
    about: 'butt joints of neighbouring courses on one joist, United States',
    published: 'barred in a ceiling that braces the building',
    source: as('secondary', 'International Residential Code', '2018', 'R702.3.6'),
    library: () => (checkStagger({ rows: [[1200], [1200]], minimum: 0 }).length > 0 ? 'barred in every ceiling' : 'allowed'),
    ours: 'barred in every ceiling',
    reason: 'Four corners on one joist leave no timber for the screws, and every other document asks for a stagger.',
  },
  {
    about: 'screws from an edge, United States',
    published: '3/8 in, in a ceiling that braces the building',
    source: as('read', 'International Residential Code', '2018', 'table R702.3.6 note d'),
    library: () => `${value(ircUs, 'fixing.cutEdgeDistance')} mm, in any`,
    ours: '9.525 mm, in any',
    reason: 'Read for bracing ceilings only. The trade association asks the same of any, from memory.',
  },
  {
    about: 'allowable load of a screw by the Wood Handbook',
    published: 'a fifth, for nails',
    source: as('secondary', 'engineering page on nails, metric table', undefined, undefined),
    library: () => `${allowableShare()}, for screws too`,
    ours: '0.2, for screws too',
    reason:
      'No share for screws was found. The NDS allows 2850 of 15,700 in the same units, 0.18: the working names the share used.',
  },
  {
    about: 'withdrawal of a No. 10 screw, G 0.45',
    published: '109 lb/in',
    source: as('read', 'NDS', '2018', '12.2.2, engineering page on wood screws'),
    library: () => `${Math.round(woodScrewWithdrawal(0.45, 0.19) * 100) / 100} lb/in`,
    ours: '109.65 lb/in',
    reason: 'The page cuts the figure off. Nothing is rounded before the last step here.',
  },
  {
    about: 'screws of less than 6 mm under EN 1995-1-1',
    published: 'withdrawal by equation 8.39 at 5 mm, in informal notebooks',
    source: as('secondary', 'EN 1995-1-1', '2004+A1:2008', '8.7.2 (4), applied outside its range'),
    library: () => {
      const { capacity, fallback } = fixingCapacity({
        fixing: { diameter: 5, innerDiameter: 3.3, embedment: 40 },
        timber: { grade: 'C24' },
        hungMassPerArea: 10,
        joistSpacing: 400,
        fixingSpacing: 230,
      });
      return `capacity ${capacity}, ${fallback === undefined ? 'no fallback' : 'a labelled fallback'}`;
    },
    ours: 'capacity 0, a labelled fallback',
    reason:
      'The clause is for 6 to 12 mm. Thinner screws need a declared strength; the fallback says that it is no rule for them.',
  },
  {
    about: 'butt joint on a joist of 35',
    published: '13 from each cut end and 6 from the edges of the timber: 38 at least',
    source: EDGES,
    library: () => {
      const joist = { id: 'J1', start: { x: 1000, y: 0 }, end: { x: 1000, y: 3000 }, width: 35, sd: 0, presence: 1 };
      return `laid, and called ${bearing({ joist: { ...joist, known: 'given' }, at: 1000 }).outcome}`;
    },
    ours: 'laid, and called short',
    reason:
      'Joists under 38 mm have no room for both. The screws stay on the timber, and a finding states the departure and the remedies.',
  },
];

const line = (...cells: readonly string[]): string => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;

/** The page of known deviations. */
export const deviationsPage = (): string => `# Known deviations

Where the library knowingly does otherwise than a document says, and why. Made by \`npm run coverage:table\` from
\`test/published/deviations.ts\`; a test compares the page, and holds each row against the code: a deviation that is gone fails it.

${[
  line('about', 'published', 'where, and how it was read', 'here', 'reason'),
  line('---', '---', '---', '---', '---'),
  ...deviations.map(({ about, published, source, ours, reason }) => line(about, published, cited(source), ours, reason)),
].join('\n')}
`;
