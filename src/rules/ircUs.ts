import type { RuleSet } from './ruleSet.js';
import { ruleSetFrom } from './ruleSetFrom.js';
import { commonPractice } from './source.js';
import { boredHoles, controlJointAreas, controlJoints, nailPenetration } from './standards/americanGuidance.js';
import { nailPairDistance, nailPairs, nailSpacing } from './standards/gypsumAssociation.js';
import {
  diaphragmSpacing,
  edgeDistance,
  fieldSpacing,
  screwPenetration,
  supportSpacing,
  texturedSpacing,
} from './standards/irc2018.js';
import { timberEdge } from './standards/specification2014.js';

/** United States: International Residential Code of 2018, the trade association's guide and ASTM C840 where they could be read. */
export const ircUs: RuleSet = /* @__PURE__ */ ruleSetFrom(
  () => ({
    id: 'ircUs',
    title: 'US: International Residential Code 2018 with the gypsum trade association and ASTM C840',
    notes: [
      'Table R702.3.5 is from memory; it agrees with the Canadian table, which was read.',
      'Tables of spans and centres change between editions, for southern pine after 2013 above all: cite the edition.',
      'A board in centres of 16 or 24 in: 406 and 610 mm, and 400 and 600 are the same rows.',
      `Movement joints: with the perimeter free to move at most ${controlJointAreas.withRelief} ft2 without one, otherwise ${controlJointAreas.withoutRelief}.`,
      'How deep a fixing may go for cables is from memory; the distance from the edge of the timber is borrowed from the UK clauses.',
      'Butt joints of neighbouring courses on the same joist are barred in a ceiling that braces the building; here they are barred in every one.',
    ],
  }),
  {
    'support.centres': [supportSpacing, texturedSpacing],
    'fixing.field': [nailSpacing, diaphragmSpacing, fieldSpacing],
    'fixing.boardEnd': [nailSpacing, diaphragmSpacing, fieldSpacing],
    'fixing.perimeter': [nailSpacing, diaphragmSpacing, fieldSpacing],
    'fixing.boundEdgeDistance': edgeDistance,
    'fixing.cutEdgeDistance': edgeDistance,
    'fixing.timberEdgeDistance': timberEdge,
    'fixing.embedment': [screwPenetration, nailPenetration],
    'fixing.preferredEmbedment': [{ value: 20, source: commonPractice }],
    'fixing.maximumEmbedment': boredHoles,
    'fixing.pairField': nailPairs,
    'fixing.pairDistance': nailPairDistance,
    'movementJoint.maximumRun': controlJoints,
  },
);
