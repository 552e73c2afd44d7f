import type { RuleSet } from '../rules/ruleSet.js';
import { numberOf } from '../rules/ruleValue.js';
import type { Joist } from '../survey/joist.js';
import { SURE } from './bearing.js';
import type { JointConfidence } from './jointConfidence.js';

/** What is printed beside a cut. */
export type Certainty = 'sure' | 'check' | 'prove first';

/** Below this a joist is proved before anything is cut to it; between it and sure it is checked. Common practice, no source. */
const CHECK = 0.75;

/** The word for a probability. */
export const certaintyOf = (probability: number): Certainty =>
  probability >= SURE ? 'sure' : probability >= CHECK ? 'check' : 'prove first';

/** A joist with end joints, and how sure they are. */
export interface JoistCertainty {
  readonly joist: string;
  readonly certainty: Certainty;
  /** The probability behind the word. */
  readonly probability: number;
}

/**
 * How sure the ends on each joist are. On timber wide enough for the edge rules the figure is that they are met; on narrower timber,
 * where no proof can help with that, that the ends are on timber at all. A joist that was given is taken at its word.
 */
export function certainties({ joists }: JointConfidence, all: readonly Joist[], rules: RuleSet): JoistCertainty[] {
  const edges = numberOf(rules, 'fixing.cutEdgeDistance') + numberOf(rules, 'fixing.timberEdgeDistance');
  const gap = numberOf(rules, 'joint.gap');
  return joists.map(({ joist: id, onTimber, withinEdgeRules }) => {
    const joist = all.find((each) => each.id === id) as Joist;
    if (joist.known === 'given' && joist.sd === 0 && joist.presence === 1) {
      return { joist: id, certainty: 'sure', probability: onTimber };
    }
    const probability = (joist.width - gap) / 2 > edges ? withinEdgeRules : onTimber;
    return { joist: id, certainty: certaintyOf(probability), probability };
  });
}

/** Ids of the joists to prove before anything is cut to them, in the order given. */
export const proveFirst = (all: readonly JoistCertainty[]): string[] =>
  all.filter(({ certainty }) => certainty !== 'sure').map(({ joist }) => joist);
