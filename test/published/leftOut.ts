import type { Source } from 'soffitwright';

/** Something that a document says and the library does not use, and why. */
interface LeftOut {
  readonly source: Source;
  readonly says: string;
  readonly because: string;
}

const read = (standard: string, edition: string | undefined, clause: string | undefined): Source => ({
  standard,
  ...(edition !== undefined && { edition }),
  ...(clause !== undefined && { clause }),
  standing: 'read',
});
const quoted = (standard: string, edition: string | undefined, clause: string): Source => ({
  ...read(standard, edition, clause),
  standing: 'secondary',
});

const SPECIFICATION = 'National Building Specification generic clauses';
const CODE = 'National Building Code, Alberta edition';
const EC5 = 'EN 1995-1-1';
const WALLS = 'walls are not planned';
const BATTENS = 'no step makes battens yet';

export const leftOut: readonly LeftOut[] = [
  {
    source: read('NHBC Standards', 'current, undated', '9.2.4 table 5'),
    says: 'boards of 9.5 to 450, thicker ones to 600, on walls',
    because: WALLS,
  },
  {
    source: read('NHBC Standards', '2022', '9.2.4'),
    says: 'cut edges on a support or nogging except at the perimeter; board face outwards; support at lights',
    because: 'noggings cannot be added from below; boards are never turned; the finish decides what a cut edge costs',
  },
  {
    source: read('NHBC Standards', '2020', '9.1.3'),
    says: 'flatness and level of a finished ceiling, 3 mm at joints',
    because: 'no step takes a reading of flatness yet',
  },
  {
    source: quoted('DIN 18202', undefined, 'tables 2 and 3'),
    says: 'flatness and squareness by distance',
    because: 'no step takes a reading of flatness yet',
  },
  {
    source: quoted(SPECIFICATION, '2014', 'K10 590, K10 610'),
    says: 'screws at 300 on walls, 200 at outer corners; inner layers at 300 round their edges',
    because: WALLS,
  },
  {
    source: quoted(SPECIFICATION, '2014', 'M20 612'),
    says: 'bound edges square to the joists; butt joints staggered, no distance given; joints of two layers apart',
    because: 'kept without a number: boards are laid across the joists only, and how far joints are apart is common practice',
  },
  {
    source: read('Textbook chapter on finishes, abstract', undefined, undefined),
    says: '9.5 board for joists up to 450; 12.5 for trusses at 600',
    because: 'nothing is said of noggings; the warranty table, which asks for them there, is followed',
  },
  {
    source: read("An engineer's book on timber roofs", undefined, 'ceiling battens'),
    says: '12.5 board on battens at about 400, never over 500',
    because: 'agrees with the 500 of DIN 18181, which is from memory; a book is no standard',
  },
  {
    source: read('Local authority building control guidance on notches and holes', undefined, undefined),
    says: 'where along a joist notches and holes may be, how far apart; none in rafters and trusses without calculation',
    because: 'nobody sees where they are: every joist is taken as bored and notched as far as it may be, and is to be scanned',
  },
  {
    source: quoted('EN 520', '2004+A1:2009', '4.9'),
    says: 'plaster base board: length 6 short, thickness within 0.6',
    because: 'such board is not planned with; its width tolerance is from memory',
  },
  {
    source: quoted(EC5, '2004+A1:2008', '8.3.2 equations 8.23 and 8.26'),
    says: 'threaded nails, and nail heads in timber and panels',
    because: 'the head term is for timber and panels, not for gypsum board; ringed nails need a declared strength',
  },
  {
    source: quoted(EC5, '2004+A1:2008', '8.7.2 (7) equation 8.40c'),
    says: 'tension strength of the screw',
    because: 'taken as declared; one screw at a time is checked, so the number of screws is 1',
  },
  {
    source: quoted(EC5, '2004+A1:2008', '8.3.3'),
    says: 'load along and across a fixing together',
    because: 'a ceiling hangs on its screws along their axis',
  },
  {
    source: read(CODE, '2023', '9.29.5.8 (2) and (3), 9.29.5.9 (2) and (3)'),
    says: 'a ceiling board that rests on a wall board counts as fixed there; spacing on walls',
    because: 'new board under an old ceiling rests on no wall board; walls are not planned',
  },
  {
    source: read(CODE, '2023', '9.29.5.8 (7), 9.29.5.9 (7)'),
    says: 'heads must not break the paper',
    because: 'workmanship: a caution of the capacity check, no number',
  },
  {
    source: read(CODE, '2023', '9.4.2.4, 9.4.3.1'),
    says: 'loads and deflection of ceiling joists',
    because: 'joists are not checked yet; every plan says so',
  },
  {
    source: quoted('International Residential Code', '2018', 'R702.3.6'),
    says: 'perimeter blocking of 2 x 6 in a ceiling that braces the building',
    because: 'blocking cannot be added from below',
  },
  {
    source: read('ASTM C1396', '2017', '1.1.9'),
    says: 'a sag-resistant ceiling board serves framing up to 24 in under a water-based texture',
    because: 'agrees with the rows for such board; the scope of a board standard limits no ceiling',
  },
  {
    source: read('ASTM C36', '2003', 'type X'),
    says: 'what a board of type X is: an hour in a tested wall',
    because: 'fire resistance rests on the test of a whole ceiling, not on a board',
  },
  {
    source: quoted('International Residential Code', '2018', 'R702.3.2'),
    says: 'framing of nominal 2 in; 1 x 2 furring only over solid backing or framing at 24 in',
    because: BATTENS,
  },
  {
    source: read('International Building Code, Virginia', '2021', '2508.3, table 2508.1'),
    says: 'edges and ends on framing, boards in moderate contact; GA-216 or ASTM C840 for the work',
    because: 'kept without a number: every butt joint is on a joist, long edges touch',
  },
  {
    source: read('Gypsum Association, Using Gypsum Board for Walls and Ceilings', undefined, 'section III'),
    says: 'fix from the middle of a board outwards; nails and screws may be mixed; staples for base layers only',
    because: 'order of work: said on the fixing order; mixed fixings and staples are not planned',
  },
  {
    source: read('Building design handbook', undefined, 'gypsum board finishes'),
    says: 'furring 1 1/2 in wide at joints; 55 F before hanging',
    because: BATTENS,
  },
  {
    source: quoted('AS/NZS 2589', '2017', 'adhesive, as summarised by an inspector'),
    says: 'daubs of 25 x 15, 200 from any fixing, 230 apart',
    because: 'over an old ceiling there are fixings only',
  },
  {
    source: read('BRANZ guideline on plasterboard ceilings', '2011', 'back-blocking'),
    says: 'three or more joints in a row are backed',
    because: "the number is one maker's; joints cannot be backed from below",
  },
  {
    source: read('Forestry reference tables', undefined, 'specific gravity of species'),
    says: 'Douglas fir 0.51, southern pine 0.59, spruce 0.41 and others',
    because: 'what species a joist is cannot be seen: the caller gives its specific gravity',
  },
  {
    source: read('GA-235', '2010', 'effective stiffness'),
    says: 'stiffness of board, in imperial and metric columns that disagree by 1.29',
    because: 'not used for fixings; the metric column would be wrong',
  },
];
