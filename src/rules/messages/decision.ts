import type { Messages } from './message.js';

/** Whether to start. */
export const decision: Messages = {
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
};
