import type { SetClauses } from './ruleSetFrom.js';
import { commonPractice } from './source.js';
import { cableZone } from './standards/bs7671of2008.js';
import { timberCentres } from './standards/nhbc2022.js';
import { boundEdge, cutEdge, endSpacing, fieldSpacing, jointGap, timberEdge } from './standards/specification2014.js';

/** What governs in the United Kingdom. */
export const ukClauses = (): SetClauses => ({
  'joint.gap': jointGap,
  'support.centres': timberCentres,
  'fixing.field': fieldSpacing,
  'fixing.boardEnd': endSpacing,
  'fixing.perimeter': endSpacing,
  'fixing.boundEdgeDistance': boundEdge,
  'fixing.cutEdgeDistance': cutEdge,
  'fixing.timberEdgeDistance': timberEdge,
  'fixing.embedment': [{ value: 25, source: commonPractice }],
  'fixing.maximumEmbedment': cableZone,
  'movementJoint.maximumRun': [{ value: 10_000, source: { standard: 'United Kingdom practice', standing: 'memory' } }],
});
