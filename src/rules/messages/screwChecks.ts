import type { Messages } from './message.js';

/** What a check of screws finds. */
export const screwChecks: Messages = {
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
  'screw-near-seam': {
    of: 'fixing-edge',
    message: 'The screw at {place} is {value} mm from the joint between the joists of {joist}; {limit} is the least.',
    remedy: 'Drive it into one of the joists; the boards of a butt joint that runs between them, each into its own.',
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
};
