import type { RuleSet } from './ruleSet.js';
import { ruleSetFrom } from './ruleSetFrom.js';
import { commonPractice } from './source.js';
import { canadianCables } from './standards/americanGuidance.js';
import {
  edgeDistance,
  insulatedBoard,
  nailPairDistance,
  nailPairs,
  nailSpacing,
  penetration,
  screwSpacing,
  supportSpacing,
  taping,
} from './standards/nbc2023alberta.js';
import { timberEdge } from './standards/specification2014.js';

/** Canada: National Building Code 9.29.5, read in its Alberta edition of 2023. */
export const nbcCanada: RuleSet = /* @__PURE__ */ ruleSetFrom(
  () => ({
    id: 'nbcCanada',
    title: 'Canada: National Building Code 9.29.5',
    notes: [
      'The article deems one layer fixed to wood to satisfy the code; over-boarding lies outside it, and fixings of an outer layer are asked to reach as far into the wood as those of the first.',
      'Fixings reach further into the joist where fire resistance is declared: 30, 45 and 60 mm for 45, 60 and 90 minutes.',
      'Printed centres of 400 and 600 are the metric names of 16 and 24 in.',
      `Board that insulation lies on is ${insulatedBoard.thickness} mm at least; the room is kept at ${taping.celsius} C or more for ${taping.hours} h before taping and after it.`,
      'How deep a fixing may go for cables is from memory; the distance from the edge of the timber is borrowed from the UK clauses.',
    ],
  }),
  {
    'support.centres': supportSpacing,
    'fixing.field': [nailSpacing, screwSpacing],
    'fixing.boardEnd': [nailSpacing, screwSpacing],
    'fixing.perimeter': [nailSpacing, screwSpacing],
    'fixing.boundEdgeDistance': edgeDistance,
    'fixing.cutEdgeDistance': edgeDistance,
    'fixing.timberEdgeDistance': timberEdge,
    'fixing.embedment': penetration,
    'fixing.preferredEmbedment': [{ value: 20, source: commonPractice }],
    'fixing.maximumEmbedment': canadianCables,
    'fixing.pairField': nailPairs,
    'fixing.pairDistance': nailPairDistance,
    'movementJoint.maximumRun': [{ value: 15_000, source: { standard: 'North American practice', standing: 'memory' } }],
  },
);
