import type { BoardLayout } from '../boards/boardLayout.js';
import { SURE } from '../joists/bearing.js';
import type { Joist } from '../survey/joist.js';
import type { CeilingPlan } from './ceilingPlan.js';

/**
 * How sure the butt joints are of their timber, all together, and which joists to prove before anything is cut to them. Joists
 * that were given stray independently of each other, so the figures multiply over joists; the joints of one joist share its
 * fate, so the least of them counts.
 */
export function certainty({ pieces }: BoardLayout, joists: readonly Joist[]): Pick<CeilingPlan, 'confidence' | 'proveFirst'> {
  const least = new Map<string, { onTimber: number; withinEdgeRules: number }>();
  for (const { joist, bearing } of pieces.flatMap((piece) => piece.ends)) {
    if (joist === undefined || bearing === undefined) continue;
    const known = least.get(joist) ?? { onTimber: 1, withinEdgeRules: 1 };
    least.set(joist, {
      onTimber: Math.min(known.onTimber, bearing.onTimber),
      withinEdgeRules: Math.min(known.withinEdgeRules, bearing.withinEdgeRules),
    });
  }
  const product = (of: 'onTimber' | 'withinEdgeRules'): number =>
    Math.round([...least.values()].reduce((all, each) => all * each[of], 1) * 1e6) / 1e6;
  const doubtful = ({ id, sd, presence, known }: Joist): boolean =>
    least.has(id) && (known === 'inferred' || presence < SURE || (sd > 0 && (least.get(id)?.withinEdgeRules ?? 1) < SURE));
  return {
    confidence: { onTimber: product('onTimber'), withinEdgeRules: product('withinEdgeRules') },
    proveFirst: joists.filter(doubtful).map((joist) => joist.id),
  };
}
