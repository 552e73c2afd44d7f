import type { RuleSet } from './ruleSet.js';
import { ruleSetFrom } from './ruleSetFrom.js';
import {
  buttJoints,
  cableZone,
  controlJoints,
  edgeDistance,
  embedment,
  fieldSpacing,
  greatestEdgeDistance,
  stagger,
  supportSpacing,
  timberEdge,
} from './standards/asNzs2589of2017.js';
import { diaphragmEdgeDistance, diaphragmEdges, diaphragmField } from './standards/nzs3604of2011.js';

/** Australia and New Zealand: AS/NZS 2589:2017, and NZS 3604:2011 for ceilings that brace the building. */
export const asNzs: RuleSet = /* @__PURE__ */ ruleSetFrom(
  {
    id: 'asNzs',
    title: 'Australia and New Zealand: AS/NZS 2589:2017, NZS 3604:2011 for bracing ceilings',
    notes: [
      'Support centres and screw spacings of AS/NZS 2589 are from memory, and not surely.',
      'Over an old ceiling there are fixings only: adhesive daubs are left out.',
      'Moisture of the timber at lining: under 15 % in Australia, 18 % at most in New Zealand.',
      'A bracing ceiling to NZS 3604 has board of at least 10 mm and 600 kg/m3 in sheets of at least 1800 x 900, is at most 7.5 m long, twice its width, and slopes at most 15 degrees.',
    ],
  },
  {
    'stagger.minimum': stagger,
    'support.centres': supportSpacing,
    'fixing.field': [fieldSpacing, diaphragmField],
    'fixing.boardEnd': [buttJoints, diaphragmEdges],
    'fixing.perimeter': [fieldSpacing, diaphragmEdges],
    'fixing.boundEdgeDistance': [edgeDistance, diaphragmEdgeDistance],
    'fixing.cutEdgeDistance': [edgeDistance, diaphragmEdgeDistance],
    'fixing.timberEdgeDistance': timberEdge,
    'fixing.floatingEdgeDistance': greatestEdgeDistance,
    'fixing.embedment': embedment,
    'fixing.maximumEmbedment': cableZone,
    'movementJoint.maximumRun': controlJoints,
  },
);
