import type { CheckStep } from '../rules/checkRecord.js';
import { greatestReaction } from '../rules/standards/beams.js';
import { permanentLoadFactor } from '../rules/standards/en1995of2008.js';

/** What one fixing carries. */
export interface HungLoad {
  readonly hungMassPerArea: number;
  readonly oldCeilingMassPerArea: number;
  readonly joistSpacing: number;
  readonly fixingSpacing: number;
  readonly spans: number;
  /** Whether the load is multiplied by the partial factor of EN 1990. */
  readonly factored: boolean;
}

const GRAVITY = 9.81;

const derived = { standard: 'statics', standing: 'derived' } as const;

/** The load on the most loaded fixing, step by step; the last step is the demand, N. */
export function hungLoad(load: HungLoad): CheckStep[] {
  const { hungMassPerArea, oldCeilingMassPerArea, joistSpacing, fixingSpacing, spans, factored } = load;
  const mass = hungMassPerArea + oldCeilingMassPerArea;
  const each = (mass * GRAVITY * joistSpacing * fixingSpacing) / 1e6;
  const share = greatestReaction(spans);
  const reaction = each * share;
  const factor = permanentLoadFactor();
  const old = oldCeilingMassPerArea > 0 ? `${hungMassPerArea} new and ${oldCeilingMassPerArea} of the old ceiling` : `${mass}`;
  return [
    {
      name: 'load on the area of one fixing',
      value: newtons(each),
      unit: 'N',
      working: `${old} kg/m2 x ${GRAVITY} x ${joistSpacing} mm x ${fixingSpacing} mm`,
      source: derived,
    },
    {
      name: 'on the most loaded joist',
      value: newtons(reaction),
      unit: 'N',
      working: `${newtons(each)} x ${share} for a board over ${spans} bays`,
      source: greatestReaction.clause.source,
    },
    ...(factored
      ? [
          {
            name: 'design load',
            value: newtons(reaction * factor),
            unit: 'N',
            working: `${newtons(reaction)} x ${factor}`,
            source: permanentLoadFactor.clause.source,
          },
        ]
      : []),
  ];
}

/** To a tenth of a newton: powers differ in the last bit between engines, and nothing is decided on that. */
export const newtons = (value: number): number => Math.round(value * 10) / 10;
