import type { Messages } from './message.js';

/** What a check of a layout finds. */
export const layoutChecks: Messages = {
  'cover-gap': {
    message: 'Not covered at {place}: a gap of {value} mm where {limit} is the most.',
    remedy: 'Cut the pieces beside it to reach, or add a piece.',
  },
  overlap: { message: 'Pieces {pieces} lie over each other by {value} mm at {place}.', remedy: 'Shorten one of them.' },
  'outside-room': {
    message: 'Piece {piece} reaches {value} mm beyond the wall at {place}.',
    remedy: 'Cut it to the wall less its gap.',
  },
  'across-zones': {
    message: 'Piece {piece} reaches {value} mm across the border of {zone} at {place}.',
    remedy: 'End it at the border: what lies beyond hangs on other joists, and moves with them.',
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
  'piece-of-row-narrow': {
    of: 'row-below-minimum',
    message: 'Piece {piece} is only {value} mm wide where its row runs along a wall; {limit} is the least for a row.',
    remedy: 'Start the rows elsewhere, so that no such strip is left.',
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
};
