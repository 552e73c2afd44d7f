/** A sentence for a person, with `{blanks}`; and what to do about it. */
export interface Message {
  readonly message: string;
  /** The code that this is another sentence for; the entry's own key is no code then. */
  readonly of?: string;
  readonly remedy?: string;
}

/**
 * The one table of what a person reads about a job, in site words: butt joint (end joint), old ceiling (lining), into the
 * joist (embedment), take down (strip), middle of board (field). Codes are stable, sentences may change.
 */
export const messages: Readonly<Record<string, Message>> = {
  // Joists
  'joist-width-assumed': {
    message: 'Joists taken as {value} mm wide: nobody measured them.',
    remedy: 'Probe both edges of one joist and give the width.',
  },
  'joist-probe-last-bay': {
    message: '{joist} is {value} mm from the wall beside it; a bay that long may hide one more joist.',
    remedy: 'Probe between {joist} and that wall before anything is cut.',
  },
  'no-joist-found': {
    message: 'No mark is of a joist: nothing is known of where they are.',
    remedy: 'Find one joist from the loft, from a line of old nail heads or with a detector, and prove it with a probe.',
  },
  'joists-inferred': {
    message: '{value} of the joists are worked out from the others, nobody has met them: {joists}. Verify before cutting.',
    remedy: 'Prove each with a probe before a butt joint is cut to it.',
  },
  'spacing-drifts-apart': {
    message:
      'The marks fit centres of {first} ({firstShare} %) and of {second} ({secondShare} %): by the wall farthest from the marks they differ by {value} mm.',
    remedy: 'Prove the joist by that wall before anything is cut.',
  },
  'spacing-undecided': {
    message: 'The marks fit centres of {first} ({firstShare} %) and of {second} ({secondShare} %).',
    remedy: 'Probe where the two readings put different joists.',
  },
  'direction-undecided': {
    message: 'The marks fit joists along {first} ({limit} %) and along {second} ({value} %).',
    remedy: 'Probe a second line along one joist, or look from above.',
  },
  'joists-irregular': {
    message: 'The joists follow no even spacing: those between and beyond the marks are guesses.',
    remedy: 'Probe every joist that a butt joint is to fall on.',
  },
  'mark-outlier': {
    message: 'Mark {number} fits no joist and was left out: a nogging, a pipe, or a nail in a lath.',
    remedy: 'Probe there again if a joist is expected.',
  },
  'joists-askew': {
    message: 'The joists run up to {value} mm in a metre off the line of the walls.',
    remedy: 'Set the first row square to the joists.',
  },
  'joists-fan': {
    message: 'The joists fan out: between one end of the room and the other the centres change by {value} mm in all.',
    remedy: 'Mark each joist at both ends and snap a line.',
  },
  'joist-doubled': {
    message: '{joist} is two joists side by side, {value} mm wide together.',
  },
  'probe-joists-first': {
    message: 'Where the joists of the butt joints stand is still open. Probe at {at} first. {reason}',
    remedy: 'Add what the hole meets to the marks and plan again before anything is cut.',
  },
  'probes-make-safe': {
    message:
      '{value} more probes and every butt joint is sure, if the joists are where they are believed. Find both edges of {list}.',
    remedy: 'Add the edges to the marks and plan again before anything is cut to these joists.',
  },
  'probe-makes-safe': {
    of: 'probes-make-safe',
    message: 'One more probe and every butt joint is sure, if the joist is where it is believed. Find both edges of {list}.',
    remedy: 'Add the edges to the marks and plan again before anything is cut to this joist.',
  },
  'probes-not-enough': {
    message: '{value} more probes do not yet make every butt joint sure. Begin with both edges of {list}.',
    remedy: 'Add the edges to the marks and plan again. Where the timber is narrow, think of a batten beside the joist.',
  },
  'probes-no-help': {
    message: 'No probe would make the butt joints on {list} sure.',
    remedy: 'Lay the butt joints on other joists, or put a batten beside these.',
  },

  // Whether to start
  'texture-untested': {
    message:
      'Layer {number} of the old ceiling ({layer}) has no asbestos test result, and {value} screws would go through it. Do not start.',
    remedy: 'Have it sampled and tested by a competent person under local rules, and give the result.',
  },
  'asbestos-positive': {
    message:
      'Layer {number} of the old ceiling ({layer}) was tested positive for asbestos, and {value} screws would go through it.',
    remedy:
      'Only people trained and, where local rules ask for it, licensed for such work, to a written plan of work. This plan is no clearance.',
  },
  'lining-unknown': {
    message: 'Nothing is known of the old ceiling: no screw length can be relied on, and its asbestos status is unknown.',
    remedy: 'Open a probe hole, once it is known that there is no asbestos, and give each layer with its thickest reading.',
  },
  'survey-missing': {
    message: 'Nobody has said whether the old ceiling is sound, dry and flat: whether it may be over-boarded is not judged here.',
  },

  // Cautions of every plan
  'services-unknown': {
    message: 'Cables and pipes may run anywhere above the old ceiling.',
    remedy: 'Trace and isolate services before the first hole, and keep screws out of their zones.',
  },
  'load-unchecked': {
    message: 'The new boards add {value} kg/m2 before plaster. This is not a structural check.',
    remedy: 'Have the joists looked at by a competent person if their size, span or state is in doubt.',
  },
  'team-unknown': {
    message: 'The heaviest piece weighs {value} kg. Nobody has said who lifts, so no piece was taken as too heavy.',
    remedy: 'Lift with two people or a board lifter; assess the lift under local rules.',
  },
  'work-at-height': {
    message: 'All of this is work at height: use a stable platform that lets you reach the board without stretching.',
  },
  dust: { message: 'Cutting, drilling and old plaster make dust: keep it down, wear a mask that fits, ventilate.' },

  // Boards
  'no-layout': {
    message: 'No layout of these boards ({boards}) was found that meets the rules that must hold.',
  },
  'end-off-timber': {
    message: 'The butt joint of {pieces} is not on {joist}: less than 10 mm of timber on one side.',
  },
  'bearing-short': {
    message:
      'The butt joint of {pieces} on {joist} cannot keep both edge distances: the joint may be {limit} mm off the middle of the joist, and is {value}.',
    remedy:
      'Use longer boards or another joist so that no joint falls here, or fix battens under the old ceiling and board to those. On a joist of 35 mm or more, a tight butt with screws about 12 mm in and angled is a departure from the rule, to be agreed.',
  },
  'end-unproven': {
    message: 'The butt joint of {pieces} is on {joist}, which nobody has proved.',
    remedy: 'Probe both edges of {joist} before these pieces are cut.',
  },
  stagger: {
    message: 'The butt joints of rows {rows} are {value} mm apart, where {limit} is asked for ({pieces}).',
  },
  'piece-below-preferred': { message: 'Piece {piece} is {value} mm long, shorter than the {limit} that is preferred.' },
  'row-below-preferred': { message: 'Row {row} is {value} mm wide, narrower than the {limit} that is preferred.' },
  'support-centres-exceeded': {
    message: 'The joists are {value} mm apart at {joist}; {thickness} mm board carries {limit} without noggings.',
    remedy: 'Thicker board, or battens at closer centres.',
  },
  'support-centres-unknown': { message: 'How far apart joists may be for {thickness} mm board is not in the rule set.' },
  'perimeter-overhang': {
    message: 'At the wall beside {joist} the boards reach {value} mm beyond the last joist, more than {limit}.',
    remedy: 'Fix noggings or a batten along that wall where a strip of the old ceiling can be opened.',
  },
  'movement-joint-wanted': {
    message: 'The ceiling runs {value} mm without a movement joint; {limit} is the most.',
    remedy: 'Carry a joint of the building through the new boards, or divide the ceiling and plan each part as a room.',
  },
  'piece-too-heavy': { message: 'Piece {piece} weighs {value} kg, more than {limit}.' },

  // Checks of a layout
  'cover-gap': {
    message: 'Not covered at {place}: a gap of {value} mm where {limit} is the most.',
    remedy: 'Cut the pieces beside it to reach, or add a piece.',
  },
  overlap: { message: 'Pieces {pieces} lie over each other by {value} mm at {place}.', remedy: 'Shorten one of them.' },
  'outside-room': {
    message: 'Piece {piece} reaches {value} mm beyond the wall at {place}.',
    remedy: 'Cut it to the wall less its gap.',
  },
  'over-opening': {
    message: 'Piece {piece} covers {value} mm of {opening} at {place}.',
    remedy: 'Notch the piece, cut the hole, or end it at the opening.',
  },
  'perimeter-gap': {
    message: 'Piece {piece} is {value} mm from the wall at {place}; {limit} is the least.',
    remedy: 'Cut it shorter, so that it can be lifted in without force.',
  },
  'loose-end-off-timber': {
    of: 'end-off-timber',
    message: 'An end of piece {piece} at {place} is not on timber: the middle of the nearest, {joist}, is {value} mm away.',
    remedy: 'Cut the piece to the middle of a joist.',
  },
  'no-timber': {
    of: 'end-off-timber',
    message: 'The end of {who} at {place} is not on timber: no joist runs there.',
  },
  'end-beyond-joist': {
    of: 'end-off-timber',
    message: 'The end of {who} at {place}: {joist} stops short, and {value} mm of the end hang on nothing.',
    remedy: 'End the boards on a joist that runs under the whole of them.',
  },
  'stagger-same-joist': {
    of: 'stagger',
    message: 'The butt joints of rows {rows} lie on the same joist, {joist}: four corners together ({pieces}).',
    remedy: 'Start one of the rows with a piece of another length.',
  },
  'stagger-positions': {
    of: 'stagger',
    message: 'Butt joints {joints} are {value} mm apart; {limit} is the least.',
  },
  'piece-below-minimum': {
    message: 'Piece {piece} is {value} mm long; {limit} is the least.',
    remedy: 'Move the joint to another joist, so that both pieces are long enough.',
  },
  'piece-on-one-support': {
    message: 'Piece {piece} has {value} joists under it; {limit} are the least.',
    remedy: 'Use a longer piece, so that it does not hang on one line of screws.',
  },
  'row-below-minimum': {
    message: 'Row {row} is {value} mm wide; {limit} is the least.',
    remedy: 'Rip the first row too, so that both are wide enough.',
  },
  'board-overcut': {
    message: 'Board {board} cannot be cut like that: {what}.',
    remedy: 'Take one of the pieces from another board.',
  },
  'board-unknown': { message: '{what}' },
  'board-unused': { message: 'No piece is cut from board {board}.' },
  'board-cutting-unproven': {
    message: 'Whether board {board} gives all of {pieces} was not found out: too many ways to cut it.',
    remedy: 'Say where on the board each piece lies.',
  },
  'board-parallel-to-supports': {
    message: 'Piece {piece} runs the wrong way: {value} mm along the joists, and the board is {limit} across its length.',
    remedy: 'Lay the length of the board across the joists: that is how it carries.',
  },
  'stock-exceeded': { message: '{value} boards of {stock} are used; {limit} can be had.' },
  'repeated-id': { message: 'There is more than one {thing}.' },
  'claim-wrong': { message: 'The layout says {what}: {claimed}; its outlines say {found}.' },
  'joint-over-old-joint': {
    message: 'A {joint} of {pieces} is {value} mm from a joint of {other}; {limit} is asked for.',
    remedy: 'Move the joint to another joist, or start the rows elsewhere.',
  },
  'joint-near-opening': { message: 'A {joint} of {pieces} is {value} mm from {other}; {limit} is asked for.' },
  'joint-near-hatch-corner': {
    message:
      'A {joint} of {pieces} is {value} mm from the line of a corner of {other}, where it would crack; {limit} is asked for.',
    remedy: 'Notch a whole board round the hatch.',
  },

  // Checks of screws
  'screw-off-timber': {
    of: 'fixing-off-timber',
    message: 'The screw at {place} is {value} mm from the middle of {joist}; {limit} is the most.',
    remedy: 'Take it out and drive one into the joist.',
  },
  'screw-without-timber': {
    of: 'fixing-off-timber',
    message: 'The screw at {place} is in no joist.',
    remedy: 'Take it out.',
  },
  'screw-near-timber-edge': {
    of: 'fixing-edge',
    message: 'The screw at {place} is {value} mm from the edge of {joist}; {limit} is the least.',
  },
  'screw-near-edge': {
    of: 'fixing-edge',
    message: 'The screw at {place} is {value} mm from the edge of piece {piece}; {limit} is the least.',
  },
  'screw-past-edge': {
    of: 'fixing-edge',
    message: 'The screw at {place} is {past} mm past the edge of piece {piece}; {limit} inside it is the least.',
  },
  'fixing-off-board': { message: 'The screw at {place} holds no board.' },
  'screw-gap': {
    of: 'fixing-gap',
    message: 'Piece {piece} on {joist}: {value} mm between screws at {place}; {limit} is the most.',
  },
  'screw-first': {
    of: 'fixing-gap',
    message: 'Piece {piece} on {joist}: {value} mm from the edge to the first screw at {place}; {limit} is the most.',
  },
  'screw-line-missing': {
    of: 'fixing-gap',
    message: 'Piece {piece} on {joist}: no screw over {value} mm; {limit} between screws is the most.',
  },
  'fixing-in-no-fix-zone': {
    message: 'The screw at {place} is {value} mm inside {zone}, where no screw may go.',
    remedy: 'Take it out with the service isolated, and move it along the joist.',
  },

  // Fixings
  'rule-from-memory': {
    message: 'Values from memory, not read in their standard ({set}): {titles}.',
    remedy: 'Check them against the standard before relying on them.',
  },
  'fixing-edge': {
    message:
      'Piece {piece} on {joist}: the butt joint is off the middle of the joist; the screws are {value} mm from the cut end instead of {limit}.',
    remedy: 'Cut the two ends to the middle of the joist, along it where it runs askew.',
  },
  'narrow-timber': {
    of: 'fixing-edge',
    message:
      'Piece {piece} on {joist}: the joist is {width} mm wide, too narrow for both edge distances; the screws are {value} mm from the cut end instead of {limit}.',
    remedy:
      'Use longer boards so that no butt joint falls here, or fix battens under the old ceiling and board to those. A tight butt with the screws about {tight} mm in and angled into the joist is a departure from the rule, to be agreed.',
  },
  'too-narrow-timber': {
    of: 'fixing-edge',
    message:
      'Piece {piece} on {joist}: the joist is {width} mm wide, too narrow for both edge distances; the screws are {value} mm from the cut end instead of {limit}.',
    remedy: 'Use longer boards so that no butt joint falls here, or fix battens under the old ceiling and board to those.',
  },
  'fixing-gap': {
    message: 'Piece {piece} on {joist}: {value} mm where no screw may go, more than the {limit} allowed between screws.',
    remedy: 'Trace the service and see whether it can be moved or guarded.',
  },
  'nail-line-near': {
    message: 'Piece {piece} on {joist}: screws are {value} mm from the line of the old lath nails; {limit} is the least.',
    remedy: 'Move them along the joist where they meet a nail, and allow for screws that are driven twice.',
  },
  'fixing-line-closed': {
    of: 'fixing-gap',
    message: 'Piece {piece} on {joist}: no screw may go anywhere along {value} mm; {limit} is allowed between screws.',
    remedy: 'Trace the service and see whether it can be moved or guarded.',
  },
  'fixing-off-timber': {
    message: 'Piece {piece} has a butt joint with less than {limit} mm of timber under its end: no screw can hold it.',
    remedy: 'Move the joint to another joist.',
  },
  'embedment-short': {
    message: 'The longest screw to be had, {length} mm, goes only {value} mm into the joist; {limit} is the least.',
    remedy: 'Get screws of at least {minimum} mm, or take down the old ceiling.',
  },
  'embedment-below-preferred': {
    message: 'The screws go {value} mm into the joist; {limit} is better, but a longer screw would go too deep.',
  },
  'embedment-deep': {
    message:
      'The first screw long enough to hold, {length} mm, would go {value} mm into the joist; below {limit} there may be pipes or cables.',
    remedy: '{remedy}',
  },
  'nail-smooth-permanent': {
    message: 'Smooth nails may not carry a ceiling: they creep out under a load that stays.',
    remedy: 'Use screws, or ringed nails with a declared strength.',
  },
  'capacity-unruled': {
    message: '{method} has no rule for a fixing of {value} mm, {embedment} mm into the joist, without a declared strength.',
    remedy: 'Give the withdrawal strength that the maker declares and its density of timber; the fallback is no code value.',
  },
  'head-pull-through-unknown': {
    message: 'Whether the heads pull through the board is not checked: no value for it was declared or tested.',
    remedy: 'Give the declared value, and keep heads just below the paper without breaking it.',
  },
  'cut-edge-taped': {
    message: 'A cut edge meets another board in the middle of the ceiling ({pieces}): tape over it would show.',
    remedy: 'Skim the ceiling, put the cut edge to a wall, or choose board widths that need no cut here.',
  },
  'embedment-hole-zone': {
    message: 'The screws go {value} mm into joists so shallow that a hole for a pipe may lie {limit} mm from their underside.',
    remedy: 'Trace the pipes from above or with a detector before driving a screw.',
  },
  'thread-short': {
    message: 'Only {value} mm of thread is in the joist; {limit} is the least.',
    remedy: 'Use screws threaded for longer.',
  },
  'fire-rating-unruled': {
    message: 'Fire resistance of {value} minutes is declared, and {set} has no figure for the screws of a rated ceiling.',
    remedy: 'Follow the test evidence of the rated ceiling, and ask whoever must accept it.',
  },
  'lining-not-probed': {
    message:
      'Nobody has opened a probe hole: the old ceiling may be {least} to {greatest} mm thick, and screws of {shortest} to {longest} mm may be wanted.',
    remedy: 'Open a probe hole beside a joist, once it is known that there is no asbestos, and measure every layer.',
  },
  'screw-length-tolerance': {
    message:
      'A screw may be {value} mm shorter or longer than its name: {length} mm is taken, with {embedment} mm into the joist at the least; screws true to their length could be {without} mm.',
  },
  'screw-length-none': {
    of: 'screw-length-tolerance',
    message: 'A screw may be {value} mm shorter or longer than its name, which is counted against it at both limits.',
  },
  'scan-for-services-notch': {
    of: 'scan-for-services',
    message:
      'Screws may go at most {limit} mm into the joist. Even so a pipe or cable may lie in a notch on the underside, up to {notch} mm in joists {depth} mm deep: scan every joist and isolate the circuits before driving a screw.',
  },
  'scan-for-services': {
    message:
      'Screws may go at most {limit} mm into the joist. Even so a pipe or cable may lie in a notch on the underside: scan every joist and isolate the circuits before driving a screw.',
  },
};

/** Fills the `{blanks}` of a sentence; lengths are shown to a tenth. */
export function fill(sentence: string, blanks: Readonly<Record<string, unknown>>): string {
  return sentence.replace(/\{(\w+)\}/g, (_, key: string) => {
    const value = blanks[key];
    if (typeof value === 'number') return String(Math.round(value * 10) / 10);
    return Array.isArray(value) ? value.join(' and ') : String(value ?? '?');
  });
}
