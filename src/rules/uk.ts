import type { RuleSet } from './ruleSet.js';
import { ruleSetFrom } from './ruleSetFrom.js';
import { timberMoisture } from './standards/nhbc2022.js';
import { ukClauses } from './ukClauses.js';

/**
 * United Kingdom: the warranty body's table for centres, generic specification clauses for fixings, common practice for the
 * rest.
 */
export const uk: RuleSet = /* @__PURE__ */ ruleSetFrom(
  () => ({
    id: 'uk',
    title: 'UK: warranty table, generic specification clauses, common practice',
    notes: [
      'The table of centres served walls and ceilings until 2022; the edition after splits it, and only its 9.5 mm ceiling rows could be read there: the 12.5 and 15 rows stand as in 2022.',
      'The closer spacing at board ends and walls comes from a clause for metal framing: on timber it should hold.',
      `The timber is to be at ${timberMoisture.percent} % of moisture or less before it is lined.`,
      'BS 8000-8:2023 replaces BS 8212, and was not read.',
    ],
  }),
  {},
  ukClauses,
);
