import type { RuleSet } from './ruleSet.js';
import { ruleSetFrom } from './ruleSetFrom.js';
import { commonPractice } from './source.js';
import { timberCentres } from './standards/nhbc2022.js';
import { ukClauses } from './ukClauses.js';

/**
 * United Kingdom over a sound old ceiling: as `uk`, but thin board over joists at 450 without noggings, since the old ceiling
 * steadies it. The old ceiling is never a fixing.
 */
export const ukOverSoundLining: RuleSet = /* @__PURE__ */ ruleSetFrom(
  () => ({
    id: 'ukOverSoundLining',
    title: 'UK over a sound old ceiling: as UK, thin board at 450 by common practice',
    notes: [
      '9.5 mm board over joists at 450 without noggings departs from the warranty table: common practice over a sound old ceiling, to save weight.',
      'The old ceiling steadies the board and holds no screw: every screw counted is in a joist.',
      'The closer spacing at board ends and walls comes from a clause for metal framing: on timber it should hold.',
    ],
  }),
  {
    'support.centres': [
      {
        value: 450,
        when: { boardThickness: 9.5, orientation: 'across', noggings: false },
        source: commonPractice,
        note: 'over a sound old ceiling only; the warranty table asks for noggings at 450',
      },
      timberCentres,
    ],
  },
  ukClauses,
);
