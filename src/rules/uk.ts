import type { Rule, RuleKey, RuleRow, RuleSet } from './ruleSet.js';
import { commonPractice, type Source } from './source.js';

/** The warranty body's table of board thickness, greatest timber centres and noggings. */
const warrantyTable: Source = {
  standard: 'NHBC Standards',
  edition: '2022',
  clause: '9.2.4 table 5',
  standing: 'read',
};

/** Generic specification clauses, read in a project specification that quotes them. */
const specification = (clause: string): Source => ({
  standard: 'National Building Specification generic clauses, as quoted in a project specification',
  edition: '2014',
  clause,
  standing: 'secondary',
});

const wiring: Source = {
  standard: 'BS 7671, as quoted in an electrical industry pocket guide',
  edition: '2008',
  clause: '522.6.5',
  standing: 'secondary',
};

const practice = (value: number, range?: RuleRow['range'], note?: string): RuleRow[] => [
  { value, ...(range && { range }), source: commonPractice, ...(note && { note }) },
];

const centres = (boardThickness: number, noggings: boolean, value: number, note?: string): RuleRow => ({
  value,
  when: { boardThickness, orientation: 'across', noggings },
  source: warrantyTable,
  ...(note && { note }),
});

const rule = (
  title: string,
  sense: Rule['sense'],
  level: Rule['level'],
  rows: readonly RuleRow[],
  unit: Rule['unit'] = 'mm',
): Rule => ({
  title,
  unit,
  sense,
  level,
  rows,
});

const PERIMETER_NOGGINGS = 'perimeter noggings asked for as well';

const rules: Record<RuleKey, Rule> = {
  'stagger.minimum': rule(
    'butt joints of neighbouring rows apart, and never on the same joist',
    'at least',
    'must',
    practice(300),
  ),
  'stagger.preferred': rule('butt joints of neighbouring rows apart, preferred', 'at least', 'should', practice(600)),
  'piece.minimumLength': rule('shortest piece', 'at least', 'must', practice(300)),
  'piece.preferredLength': rule('shortest piece, preferred', 'at least', 'should', practice(600)),
  'piece.minimumSupports': rule(
    'joists under each piece, those of its butt joints counted',
    'at least',
    'must',
    practice(2, undefined, 'no flap on one line of screws'),
    'joists',
  ),
  'piece.maximumMass': rule(
    'heaviest piece',
    'at most',
    'must',
    [{ value: null, source: commonPractice, note: 'no limit unless one is given' }],
    'kg',
  ),
  'row.minimumWidth': rule('narrowest row', 'at least', 'must', practice(200)),
  'row.preferredWidth': rule('narrowest row, preferred', 'at least', 'should', practice(300)),
  'perimeter.gap': rule('gap between board and wall', 'nominal', 'must', practice(5, { least: 3, greatest: 10 })),
  'perimeter.overhang': rule('board beyond its last joist at a wall', 'at most', 'should', practice(150)),
  'perimeter.probeBay': rule('last joist from a wall before one more is looked for', 'at most', 'should', practice(300)),
  'joint.gap': rule('gap at a butt joint', 'nominal', 'must', [
    {
      value: 3,
      range: { least: 0, greatest: 5 },
      source: specification('M20 612'),
      note: 'the clause gives 3 as the most; 5 beside a board that came short, common practice, no source',
    },
  ]),
  'edgeJoint.gap': rule('gap between long edges', 'nominal', 'must', practice(0, undefined, 'light contact')),
  kerf: rule('width of a cut', 'nominal', 'must', practice(0, undefined, 'a board scored and snapped loses nothing')),
  'cut.tolerance': rule('accuracy of a cut', 'at most', 'must', practice(2)),
  'oldJoint.clearance': rule('new joint from a joint of the old ceiling', 'at least', 'should', practice(200)),
  'opening.jointClearance': rule('joint from an opening', 'at least', 'should', practice(100)),
  'hatch.cornerClearance': rule('joint from the line of a hatch corner', 'at least', 'should', practice(150)),
  'support.centres': rule('joist centres', 'at most', 'must', [
    centres(9.5, false, 400, PERIMETER_NOGGINGS),
    centres(9.5, true, 450, PERIMETER_NOGGINGS),
    centres(12.5, false, 450, PERIMETER_NOGGINGS),
    centres(12.5, true, 600, PERIMETER_NOGGINGS),
    centres(15, false, 600, `${PERIMETER_NOGGINGS}, unless the guidance for the joist or the board waives them`),
  ]),
  'fixing.field': rule('fixings along a joist, middle of board', 'at most', 'must', [
    { value: 230, source: specification('K10 610, M20 610') },
    { value: 150, when: { fixing: 'nail' }, source: specification('K10 610, M20 610') },
  ]),
  'fixing.boardEnd': rule('fixings along a board end', 'at most', 'should', [
    { value: 150, source: specification('K10 590'), note: 'from a clause for metal framing, commonly applied to timber' },
  ]),
  'fixing.perimeter': rule('fixings along the edge of the ceiling', 'at most', 'should', [
    { value: 150, source: specification('K10 590'), note: 'from a clause for metal framing, commonly applied to timber' },
  ]),
  'fixing.boundEdgeDistance': rule('fixing from a bound edge', 'at least', 'must', [
    { value: 10, source: specification('K10 610, M20 610') },
  ]),
  'fixing.cutEdgeDistance': rule('fixing from a cut edge or end', 'at least', 'must', [
    { value: 13, source: specification('K10 610, M20 610') },
  ]),
  'fixing.timberEdgeDistance': rule('fixing from the edge of the timber', 'at least', 'must', [
    { value: 6, source: specification('K10 610, M20 610') },
  ]),
  'fixing.floatingEdgeDistance': rule('fixing from an edge, at most, where that saves one', 'at most', 'must', practice(25)),
  'fixing.embedment': rule('fixing into the joist', 'at least', 'must', practice(25)),
  'fixing.preferredEmbedment': rule('fixing into the joist, preferred', 'at least', 'should', practice(30)),
  'fixing.maximumEmbedment': rule('fixing into the joist', 'at most', 'must', [
    {
      value: 45,
      source: wiring,
      note: 'cables may run 50 from the underside of a joist; 45 leaves a margin of 5, common practice',
    },
  ]),
  'fixing.serviceMargin': rule('point of a fixing from a known pipe or cable', 'at least', 'must', practice(5)),
  'movementJoint.maximumRun': rule('ceiling without a movement joint', 'at most', 'should', [
    { value: 10_000, source: { standard: 'United Kingdom practice', standing: 'memory' } },
  ]),
};

/**
 * United Kingdom: the warranty body's table for centres, generic specification clauses for fixings, common practice for the
 * rest. The table served walls and ceilings until 2022; the edition after splits it, and only its 9.5 mm ceiling rows could be
 * read there: the 12.5 and 15 rows stand as in 2022.
 */
export const uk: RuleSet = {
  id: 'uk',
  title: 'UK: warranty table, generic specification clauses, common practice',
  rules,
};
