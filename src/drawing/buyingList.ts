import type { CeilingPlan } from '../plan/ceilingPlan.js';
import { admit } from '../survey/door.js';
import { planSchema, tableOptionsSchema } from './schemas.js';
import { subjectOf } from './subjectOf.js';
import { type Table, type TableOptions, tableOf } from './table.js';

/**
 * What to buy, in whole packs, what is needed and what is spare, and how each quantity comes about. Under a hold the table says
 * so: nothing is to be bought by it.
 *
 * @param plan - what `planCeiling` returned
 * @returns a table
 * @throws InputError when the plan or an option is not as described
 * @example
 * ```ts
 * import { planCeiling, rectangle } from 'soffitwright';
 * import { buyingList } from 'soffitwright/drawing';
 *
 * const plan = planCeiling({
 *   room: { outline: rectangle(2390, 1190) },
 *   joists: { direction: 'y', first: 25, spacing: 390, last: 2365, width: 50 },
 *   lining: [],
 *   boards: [{ id: '1200 x 2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
 * });
 * const { columns, rows } = buyingList(plan);
 * console.log(columns.slice(0, 2).join(', '), '|', rows[0].slice(0, 2).join(', '));
 * // item, buy | board 2400 x 1200 x 12.5 (1200 x 2400), 1
 * ```
 */
export function buyingList(plan: CeilingPlan, options: TableOptions = {}): Table {
  admit(planSchema, plan, 'plan');
  admit(tableOptionsSchema, options, 'options');
  const subject = subjectOf(plan, options.units, options.messages);
  const { say } = subject;
  const { lines, wasteKg, cost } = plan.takeOff;
  const tenth = (value: number): number => Math.round(value * 10) / 10;
  return tableOf(subject, {
    title: say('buy.title'),
    columns: [
      say('buy.item'),
      say('buy.packs'),
      say('buy.pack'),
      say('buy.unit'),
      say('buy.needed'),
      say('buy.spare'),
      say('buy.basis'),
    ],
    rows: lines.map(({ item, packs, perPack, unit, quantity, basis }) => [
      item,
      packs,
      perPack,
      unit,
      tenth(quantity),
      tenth(packs * perPack - quantity),
      basis,
    ]),
    notes: [
      say('buy.waste', { mass: tenth(wasteKg) }),
      ...(cost === undefined ? [] : [say('buy.cost', { cost: cost.toFixed(2) })]),
    ],
  });
}
