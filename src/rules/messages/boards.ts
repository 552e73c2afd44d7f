import type { Messages } from './message.js';

/** Where the boards go. */
export const boards: Messages = {
  'no-layout': {
    message: 'No layout of these boards ({boards}) was found that meets the rules that must hold.',
  },
  'end-off-timber': {
    message: 'The butt joint of {pieces} is not on {joist}: less than 10 mm of timber on one side.',
  },
  'locked-off-timber': {
    of: 'end-off-timber',
    message: 'The butt joint of {pieces} is on no joist, and one of them is up already.',
    remedy:
      'Cut the piece that is up back to the middle of a joist that was found, or take it down; or cut out a strip of the old ceiling and fix timber between the joists there, flush with them, for both ends. Do not leave an end of board hanging.',
  },
  'locked-on-one-support': {
    of: 'piece-on-one-support',
    message: 'Piece {piece}, which is up already, has {value} joists under it; {limit} are the least.',
    remedy: 'Prop it and take it down, or cut out a strip of the old ceiling and fix a side batten or noggings flush.',
  },
  'filling-on-one-support': {
    of: 'piece-on-one-support',
    message: 'Piece {piece} fills its place from wall to wall with {value} joists under it; {limit} are the least.',
    remedy:
      'Cut out a strip of the old ceiling beside the wall and fix timber for its edge there, from joist to joist or to the wall.',
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
  'rows-askew': {
    message:
      'The rows are not square to the joists: over a row of {width} mm they run {value} mm aside, {inMetre} mm in a metre; {limit}, the width of a joist, is the most.',
    remedy: 'Give outline and joists with x or y along the joists: rows then lie square to them.',
  },
  'support-centres-unknown': { message: 'How far apart joists may be for {thickness} mm board is not in the rule set.' },
  'wet-finish': {
    message:
      'Plaster wets the board: joists {value} mm apart, where {limit} is the most for {thickness} mm board under a wet finish.',
    remedy: 'Thicker or sag-resistant board, battens at closer centres, or tape and paint.',
  },
  'wet-finish-unlisted': {
    of: 'wet-finish',
    message: 'Plaster wets the board: a wet finish on {thickness} mm board is not in the rule set ({set}).',
    remedy: 'Thicker or sag-resistant board, or tape and paint.',
  },
  'perimeter-overhang': {
    message:
      'The wall beside {joist} is {value} mm from it, and it is the last timber under the boards there; {limit} is the most.',
    remedy:
      'Cut out a strip of the old ceiling 150 to 200 wide along that wall, fix noggings or a batten to the side of the joist flush with it, and make good. Not before the old ceiling is known to hold no asbestos and the services in it are traced. Lath is no support.',
  },
  'border-overhang': {
    of: 'perimeter-overhang',
    message:
      'The border of the boards beside {joist} is {value} mm from it, and it is the last timber under them there; {limit} is the most.',
    remedy:
      'Cut out a strip of the old ceiling 150 to 200 wide along the border, fix noggings or a batten flush with the joists, and make good. Not before the old ceiling is known to hold no asbestos and the services in it are traced. Lath is no support.',
  },
  'zone-border': {
    message:
      'Boards stop at the border of {zones}, {value} mm long: no piece lies across it, and the same thickness goes on both sides.',
    remedy:
      'A movement bead over the border, or an angle bead where the two ceilings meet at an angle; timber behind the edge on both sides.',
  },
  'zone-border-open': {
    of: 'zone-border',
    message: 'Boards of {zones} end within the room along {value} mm, at no wall.',
    remedy: 'An angle bead or a stop bead along that edge, and timber behind it.',
  },
  'movement-joint-wanted': {
    message: 'The ceiling runs {value} mm without a movement joint; {limit} is the most.',
    remedy:
      'Carry a joint of the building through the new boards, or make the two sides zones, so that no piece crosses the joint.',
  },
  'movement-joint-at': {
    of: 'movement-joint-wanted',
    message: 'The ceiling runs {value} mm without a movement joint; {limit} is the most. It would go on {place}.',
    remedy:
      'Carry a joint of the building through the new boards, or make the two sides zones, so that no piece crosses the joint.',
  },
  'piece-neck-narrow': {
    message:
      'Piece {piece} is notched so far that {value} mm of it is left beside the opening; under {limit} it snaps when lifted.',
    remedy: 'Part it there with a butt joint on a timber between the sides of the opening, or have somebody hold the neck.',
  },
  'raking-light': {
    message:
      'The butt joint of {pieces} is {value} mm from the wall with the window: its light shows a joint nearer than {limit}.',
    remedy: 'Turn the row about, so that its joint is on the other side, or use a longer board at the window.',
  },
  'window-row-ripped': {
    message: 'Row {row}, beside the window, is ripped to {value} mm: its long joint is nearer to the light than it need be.',
    remedy: 'Begin with a full row at the window, and rip the row opposite.',
  },
  'piece-too-heavy': { message: 'Piece {piece} weighs {value} kg, more than {limit}.' },
};
