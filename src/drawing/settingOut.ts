import type { CeilingPlan } from '../plan/ceilingPlan.js';
import { admit } from '../survey/door.js';
import { joistTable } from './joistTable.js';
import { lineTable } from './lineTable.js';
import { openingTable } from './openingTable.js';
import { planSchema, tableOptionsSchema } from './schemas.js';
import { subjectOf } from './subjectOf.js';
import type { Table, TableOptions } from './table.js';
import { wallTable } from './wallTable.js';

/** The tables of a setting-out sheet. */
export interface SettingOut {
  /** Where each joist is at both ends, how it was found, and what it is for. */
  readonly joists: Table;
  /** Lines to chalk, in order, with a diagonal to check them. */
  readonly lines: Table;
  readonly openings: Table;
  /** The walls by their names on the drawings, with their lengths. */
  readonly walls: Table;
}

/**
 * What to measure and chalk before anything goes up: joists and row edges as running dimensions from two named walls at both
 * ends, a diagonal that proves the lines square, the openings and the walls. Every zone is set out from its own walls and
 * borders; a figure from another wall than its table says names it.
 *
 * @param plan - what `planCeiling` returned
 * @returns four tables, lengths in mm
 * @throws InputError when the plan or an option is not as described
 * @example
 * ```ts
 * import { planCeiling, rectangle } from 'soffitwright';
 * import { settingOut } from 'soffitwright/drawing';
 *
 * const plan = planCeiling({
 *   room: { outline: rectangle(2390, 1190) },
 *   joists: { direction: 'y', first: 25, spacing: 390, last: 2365, width: 50 },
 *   lining: [],
 *   boards: [{ id: '1200 x 2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
 * });
 * console.log(settingOut(plan).joists.rows[1].slice(0, 4).join(' | '));
 * // J2 | 415 | 415 | 50
 * ```
 */
export function settingOut(plan: CeilingPlan, options: TableOptions = {}): SettingOut {
  admit(planSchema, plan, 'plan');
  admit(tableOptionsSchema, options, 'options');
  const subject = subjectOf(plan, options.units, options.messages);
  return {
    joists: joistTable(subject),
    lines: lineTable(subject),
    openings: openingTable(subject),
    walls: wallTable(subject),
  };
}
