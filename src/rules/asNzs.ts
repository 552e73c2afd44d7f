import type { RuleSet } from './ruleSet.js';
import { ruleSetFrom } from './ruleSetFrom.js';
import {
  buttJoints,
  cableZone,
  controlJoints,
  edgeDistance,
  embedment,
  faceWidth,
  fieldSpacing,
  flatness,
  greatestEdgeDistance,
  stagger,
  supportSpacing,
  timberEdge,
  timberMoisture,
} from './standards/asNzs2589of2017.js';
import { diaphragmEdgeDistance, diaphragmEdges, diaphragmField, diaphragmSheet } from './standards/nzs3604of2011.js';

/** Australia and New Zealand: AS/NZS 2589:2017, and NZS 3604:2011 for ceilings that brace the building. */
export const asNzs: RuleSet = /* @__PURE__ */ ruleSetFrom(
  () => ({
    id: 'asNzs',
    title: 'Australia and New Zealand: AS/NZS 2589:2017, NZS 3604:2011 for bracing ceilings',
    notes: [
      'Support centres and screw spacings of AS/NZS 2589 are from memory, and not surely.',
      'Over an old ceiling there are fixings only: adhesive daubs are left out.',
      `Moisture of the timber at lining: under ${timberMoisture.australiaBelow} % in Australia, ${timberMoisture.newZealand} % at most in New Zealand.`,
      `Timber is ${faceWidth.other} mm wide at least, ${faceWidth.buttJoint} under a butt joint, and within ${flatness.gap} of flat under a straight edge of ${flatness.straightEdge}.`,
      bracing(),
    ],
  }),
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

function bracing(): string {
  const { thickness, density, sheetLength, sheetWidth, greatestLength, greatestSlope } = diaphragmSheet;
  return `A bracing ceiling to NZS 3604 has board of at least ${thickness} mm and ${density} kg/m3 in sheets of at least ${sheetLength} x ${sheetWidth}, is at most ${greatestLength / 1000} m long, twice its width, and slopes at most ${greatestSlope} degrees.`;
}
