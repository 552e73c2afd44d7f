import type { RuleKey, RuleRow } from './ruleSet.js';
import { commonPractice } from './source.js';

type PracticeKey = Exclude<RuleKey, 'support.centres' | `fixing.${string}` | 'movementJoint.maximumRun'> | CommonFixingKey;
type CommonFixingKey =
  | 'fixing.floatingEdgeDistance'
  | 'fixing.preferredEmbedment'
  | 'fixing.serviceMargin'
  | 'fixing.nailLineClearance'
  | 'fixing.practiceField'
  | 'fixing.tightButtTimber'
  | 'fixing.tightButtDistance'
  | 'fixing.pairField'
  | 'fixing.pairDistance';

const by = (value: number | null, more: Omit<RuleRow, 'value' | 'source'> = {}): RuleRow[] => [
  { value, ...more, source: commonPractice },
];

/** Common practice, no source: what every set falls back on where its standards say nothing. */
export const practiceRows = (): Readonly<Record<PracticeKey, readonly RuleRow[]>> => ({
  'stagger.minimum': by(300),
  'stagger.preferred': by(600),
  'piece.minimumLength': by(300),
  'piece.preferredLength': by(600),
  'piece.minimumSupports': by(2, { note: 'no flap on one line of screws' }),
  'piece.supportLength': by(250, { note: 'room for two screws at the usual spacing' }),
  'piece.maximumMass': by(null, { note: 'no limit unless one is given' }),
  'piece.minimumNeck': by(300, { note: 'a narrower neck snaps when the piece is lifted' }),
  'piece.neckRest': by(100, { note: 'a longer part hangs by the neck' }),
  'row.minimumWidth': by(200),
  'row.preferredWidth': by(300),
  'perimeter.gap': by(5, { range: { least: 3, greatest: 10 } }),
  'perimeter.overhang': by(150),
  'perimeter.probeBay': by(300),
  'joint.gap': by(3, { range: { least: 0, greatest: 5 } }),
  'edgeJoint.gap': by(0, { note: 'light contact' }),
  kerf: by(0, { note: 'a board scored and snapped loses nothing' }),
  'cut.tolerance': by(2),
  'oldJoint.clearance': by(200),
  'opening.joistClearance': by(10, { note: 'room for the clips of a light' }),
  'opening.jointClearance': by(100),
  'hatch.cornerClearance': by(150),
  'light.jointDistance': by(1200, { note: 'light that rakes along the ceiling shows a butt joint' }),
  'fixing.floatingEdgeDistance': by(25),
  'fixing.preferredEmbedment': by(30),
  'fixing.serviceMargin': by(5),
  'fixing.nailLineClearance': by(9, { range: { least: 8, greatest: 10 } }),
  'fixing.practiceField': by(300, { note: 'about one each 300: five across a board of 1200' }),
  'fixing.tightButtTimber': by(35),
  'fixing.tightButtDistance': by(12, { note: 'a departure from the edge distances' }),
  'fixing.pairField': by(null, { note: 'the set has no rule for nails in pairs' }),
  'fixing.pairDistance': by(null, { note: 'the set has no rule for nails in pairs' }),
});
