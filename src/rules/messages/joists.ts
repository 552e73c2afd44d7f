import type { Messages } from './message.js';

/** Where the timber is. */
export const joists: Messages = {
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
  'spacing-drift': {
    message:
      'Centres of {first} are easily taken for {second}: over this room the joist by the far wall would be {value} mm from its place.',
    remedy: 'Prove the joist by the far wall before anything is cut, and give its place as the last.',
  },
  'spacing-contradicted': {
    message:
      'The last joist stands where centres of {second} would put it, not {first}: over the room that is {value} mm. The joists between may be up to that much off.',
    remedy: 'Prove a joist in the middle of the room before anything is cut.',
  },
  'spacing-undecided': {
    message: 'The marks fit centres of {first} ({firstShare} %) and of {second} ({secondShare} %).',
    remedy: 'Probe where the two readings put different joists.',
  },
  'direction-undecided': {
    message: 'The marks fit joists along {first} ({limit} %) and along {second} ({value} %).',
    remedy: 'Probe a second line along one joist, or look from above.',
  },
  'joist-missing': {
    message:
      'A joist is expected at {x}, {y} and the probes there met none. It was left out; the chance that it is there is about {value} %.',
    remedy: 'Look for a trimmer; the bay is twice as wide, and the board needs a batten or a nogging there.',
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
  'light-on-joist': {
    message: 'The hole for {name} would be cut where {joist} is. The nearest clear place is {place}.',
    remedy: 'Move it there, or ask for a fitting that needs no hole. No joist is to be cut or notched for it.',
  },
  'light-on-joist-nowhere': {
    of: 'light-on-joist',
    message:
      'The hole for {name} would be cut where {joist} is, and straight across or along the joists there is no clear place.',
    remedy: 'Ask for a smaller fitting or one that needs no hole. No joist is to be cut or notched for it.',
  },
  'joists-overlap': {
    message: '{joist} and {other} lie over each other by {value} mm: one joist measured twice, or a width that is wrong.',
    remedy: 'Probe both edges there, and give each joist once.',
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
};
