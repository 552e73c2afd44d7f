import type { Messages } from './message.js';

/** Cautions of every plan. */
export const plan: Messages = {
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
  'layers-on-bars': {
    message: 'Two layers of board are planned on metal bars that the old ceiling hangs from. Do not start.',
    remedy: 'Refer: have a competent person say what the bars and their fixings carry.',
  },
  dust: { message: 'Cutting, drilling and old plaster make dust: keep it down, wear a mask that fits, ventilate.' },
};
