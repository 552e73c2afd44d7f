/** A sentence for a person, with `{blanks}`; and what to do about it. */
export interface Message {
  readonly message: string;
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

  // Fixings
  'fixing-edge': {
    message: 'Piece {piece} on {joist}: the timber is too narrow, the screws are {value} mm from the cut end instead of {limit}.',
    remedy:
      'Use longer boards so that no butt joint falls here, board to battens, or butt the ends tight and drive the screws about 12 mm in and angled into the joist: a departure from the rule.',
  },
  'fixing-gap': {
    message: 'Piece {piece} on {joist}: {value} mm where no screw may go, more than the {limit} allowed between screws.',
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
