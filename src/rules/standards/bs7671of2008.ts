import { table } from '../clause.js';

/**
 * BS 7671:2008 522.6.5: a cable through a joist without protection against nails and screws keeps 50 mm from its top and bottom.
 * The eighteenth edition numbers the rule otherwise; the number there is from memory and not used.
 */
export const cableZone = /* @__PURE__ */ table(
  {
    id: 'bs-7671-2008-522.6.5',
    source: {
      standard: 'BS 7671, as quoted in an electrical industry pocket guide',
      edition: '2008',
      clause: '522.6.5',
      standing: 'secondary',
    },
    governs: 'how deep a fixing may go for cables',
  },
  [{ value: 45, note: 'cables may run 50 from the underside of a joist; 45 leaves a margin of 5, common practice' }],
);
