import type { Messages } from './message.js';

/** How the boards are held. */
export const fixings: Messages = {
  'rule-from-memory': {
    message: 'Values from memory, not read in their standard ({set}): {titles}.',
    remedy: 'Check them against the standard before relying on them.',
  },
  'fixing-edge': {
    message:
      'Piece {piece} on {joist}: the butt joint is off the middle of the joist; the screws are {value} mm from the cut end instead of {limit}.',
    remedy: 'Cut the two ends to the middle of the joist, along it where it runs askew.',
  },
  'wall-timber': {
    of: 'fixing-edge',
    message:
      'Piece {piece} on {joist}: its end covers little of the joist; the screws are {value} mm from the cut end instead of {limit}.',
    remedy: 'Bring the end nearer to the wall, as far as the gap there allows.',
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
