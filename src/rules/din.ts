import type { RuleSet } from './ruleSet.js';
import { ruleSetFrom } from './ruleSetFrom.js';
import { commonPractice } from './source.js';
import { boundEdge, cutEdge, embedment, fixingSpacing, movementJoints, stagger, supportSpacing } from './standards/din18181.js';
import { timberEdge } from './standards/specification2014.js';

/** Germany: DIN 18181 and EN 520. */
export const din: RuleSet = /* @__PURE__ */ ruleSetFrom(
  () => ({
    id: 'din',
    title: 'Germany: DIN 18181 and EN 520',
    notes: [
      'Every value of DIN 18181 is from memory and wants checking against the standard.',
      'The distance from the edge of the timber is borrowed from the UK clauses; how deep a fixing may go is common practice: electrical rules were not read.',
    ],
  }),
  {
    'stagger.minimum': stagger,
    'support.centres': supportSpacing,
    'fixing.field': fixingSpacing,
    'fixing.boardEnd': fixingSpacing,
    'fixing.perimeter': fixingSpacing,
    'fixing.boundEdgeDistance': boundEdge,
    'fixing.cutEdgeDistance': cutEdge,
    'fixing.timberEdgeDistance': timberEdge,
    'fixing.embedment': embedment,
    'fixing.maximumEmbedment': [{ value: 45, source: commonPractice }],
    'movementJoint.maximumRun': movementJoints,
  },
);
