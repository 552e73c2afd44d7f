import type { Level, Rule, RuleKey, Sense } from './ruleSet.js';

type Facts = Omit<Rule, 'rows'>;

type Say = (level: Level, title: string, unit?: Rule['unit']) => Facts;

const says =
  (sense: Sense): Say =>
  (level, title, unit = 'mm') => ({ title, unit, sense, level });

/** What each rule governs, in site words, and whether it must hold: the same in every set. */
export function ruleFacts(): Readonly<Record<RuleKey, Facts>> {
  const [atLeast, atMost, nominal] = [says('at least'), says('at most'), says('nominal')];
  return {
    'stagger.minimum': atLeast('must', 'butt joints of neighbouring rows apart, and never on the same joist'),
    'stagger.preferred': atLeast('should', 'butt joints of neighbouring rows apart, preferred'),
    'piece.minimumLength': atLeast('must', 'shortest piece'),
    'piece.preferredLength': atLeast('should', 'shortest piece, preferred'),
    'piece.minimumSupports': atLeast('must', 'joists under each piece, those of its butt joints counted', 'joists'),
    'piece.supportLength': atLeast('must', 'joist under a piece for it to count, or half the width of the piece'),
    'piece.maximumMass': atMost('must', 'heaviest piece', 'kg'),
    'piece.minimumNeck': atLeast('should', 'what is left of a piece beside the notch for an opening'),
    'piece.neckRest': atMost('should', 'part of a piece beyond a neck that rests on the timber beside the opening'),
    'row.minimumWidth': atLeast('must', 'narrowest row'),
    'row.preferredWidth': atLeast('should', 'narrowest row, preferred'),
    'perimeter.gap': nominal('must', 'gap between board and wall'),
    'perimeter.overhang': atMost('should', 'board beyond its last joist at a wall'),
    'perimeter.probeBay': atMost('should', 'last joist from a wall before one more is looked for'),
    'joint.gap': nominal('must', 'gap at a butt joint'),
    'edgeJoint.gap': nominal('must', 'gap between long edges'),
    kerf: nominal('must', 'width of a cut'),
    'cut.tolerance': atMost('must', 'accuracy of a cut'),
    'oldJoint.clearance': atLeast('should', 'new joint from a joint of the old ceiling'),
    'opening.joistClearance': atLeast('should', 'hole for a light from the side of a joist'),
    'opening.jointClearance': atLeast('should', 'joint from an opening'),
    'hatch.cornerClearance': atLeast('should', 'joint from the line of a hatch corner'),
    'light.jointDistance': atLeast('should', 'butt joint from a window in a wall that runs with the joists'),
    'support.centres': atMost('must', 'joist centres'),
    'fixing.field': atMost('must', 'fixings along a joist, middle of board'),
    'fixing.boardEnd': atMost('should', 'fixings along a board end'),
    'fixing.perimeter': atMost('should', 'fixings along the edge of the ceiling'),
    'fixing.boundEdgeDistance': atLeast('must', 'fixing from a bound edge'),
    'fixing.cutEdgeDistance': atLeast('must', 'fixing from a cut edge or end'),
    'fixing.timberEdgeDistance': atLeast('must', 'fixing from the edge of the timber'),
    'fixing.floatingEdgeDistance': atMost('must', 'fixing from an edge, at most, where that saves one'),
    'fixing.embedment': atLeast('must', 'fixing into the joist'),
    'fixing.preferredEmbedment': atLeast('should', 'fixing into the joist, preferred'),
    'fixing.maximumEmbedment': atMost('must', 'depth of a fixing in the joist, for cables and pipes'),
    'fixing.serviceMargin': atLeast('must', 'point of a fixing from a known pipe or cable'),
    'fixing.nailLineClearance': atLeast('should', 'fixing from the line of old lath nails'),
    'fixing.practiceField': nominal('should', 'fixings along a joist, middle of board, by rule of thumb'),
    'fixing.tightButtTimber': atLeast('should', 'joist under two ends butted tight and fixed at an angle'),
    'fixing.tightButtDistance': nominal('should', 'fixing from an end that is butted tight, at an angle'),
    'fixing.pairField': atMost('must', 'pairs of nails along a joist'),
    'fixing.pairDistance': nominal('must', 'second nail of a pair from the first'),
    'movementJoint.maximumRun': atMost('should', 'ceiling without a movement joint'),
  };
}
