import * as z from 'zod/mini';
import { locateZones } from '../joists/locateZones.js';
import { type Finding, inOrderOfSeverity } from '../rules/finding.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { rulesInputSchema } from '../rules/schemas.js';
import { type RulesInput, rulesOf } from '../rules/withRules.js';
import type { BoardStock } from '../survey/boardStock.js';
import { admit } from '../survey/door.js';
import type { JoistDescription } from '../survey/joist.js';
import type { Layer } from '../survey/layer.js';
import type { Room } from '../survey/room.js';
import { boardsSchema, joistDescriptionSchema, liningSchema, roomSchema } from '../survey/schemas.js';
import { bearings } from './bearings.js';
import type { Work } from './ceiling.js';
import { ceilingParts } from './ceilingParts.js';
import { claims } from './claims.js';
import { coverGaps } from './coverGaps.js';
import { cutting } from './cutting.js';
import { layoutSchema } from './layoutSchema.js';
import type { LayoutToCheck } from './layoutToCheck.js';
import { nearby } from './nearby.js';
import { necks } from './necks.js';
import { overhangs } from './overhangs.js';
import { overlaps } from './overlaps.js';
import { rowsOfParts } from './rowsOfParts.js';
import { sizes } from './sizes.js';
import { staggers } from './staggers.js';
import { structureOf } from './structure.js';
import { viewsOf } from './views.js';
import { wallGaps } from './wallGaps.js';
import { wideBays } from './wideBays.js';

/** What {@link checkLayout} takes. */
export interface LayoutCheck {
  readonly room: Room;
  readonly joists: JoistDescription;
  readonly layout: LayoutToCheck;
  /** The stock that the layout's boards name. */
  readonly boards: readonly BoardStock[];
  readonly rules?: RulesInput;
  /** The old ceiling, room side first, for its joints. */
  readonly lining?: readonly Layer[];
}

const requestSchema: z.ZodMiniType<LayoutCheck> = z.strictObject({
  room: roomSchema,
  joists: joistDescriptionSchema,
  layout: layoutSchema,
  boards: boardsSchema,
  rules: z.optional(rulesInputSchema),
  lining: z.optional(liningSchema),
});

/**
 * Checks a layout, this library's or anybody's, from the outlines of its pieces and the names of its boards alone; whatever
 * else it says of itself is checked where it is present. Shares no code with the placement.
 *
 * Looked for: parts not covered, pieces over each other, beyond the walls, across the border of a zone or over openings; board
 * ends and the timber under them, at the worst place of each; stagger; pieces and rows that are too small; necks that would snap;
 * pieces on one joist; boards that cannot give their pieces; stock; long way along the joists; bays and overhangs; old joints,
 * openings and hatch corners; weight; claims.
 *
 * Rooms, openings and pieces may be of any simple outline, joists may begin and end anywhere and run askew; a row runs along the
 * axis that its joists cross, zone by zone. Butt joints of neighbouring rows are compared where boards meet along the row edge all
 * the way from one to the other, by their centre lines at that edge.
 *
 * @param request - plan coordinates in mm; `joists` in any of their forms; fields of `layout` that are not known are let through
 * @returns findings in order of severity; a valid layout has no `error`
 * @throws InputError when a value is missing or of the wrong type, or a field outside `layout` is unknown
 * @example
 * ```ts
 * import { checkLayout, rectangle } from 'soffitwright';
 *
 * const findings = checkLayout({
 *   room: { outline: rectangle(2390, 1210) },
 *   joists: { direction: 'y', first: 45, spacing: 400, last: 2345, width: 50 },
 *   boards: [{ id: 'b', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
 *   layout: {
 *     pieces: [{ id: '1.1', outline: [{ x: 5, y: 5 }, { x: 2385, y: 5 }, { x: 2385, y: 1190 }, { x: 5, y: 1190 }], board: '1' }],
 *     boards: [{ id: '1', stock: 'b' }],
 *   },
 * });
 * console.log(findings.map(({ severity, message }) => severity + ': ' + message).join('\n'));
 * // error: Not covered at 1195, 1200: a gap of 20 mm where 10 is the most.
 * ```
 */
export function checkLayout(request: LayoutCheck): Finding[] {
  admit(requestSchema, request);
  return layoutFindings({ ...request, rules: rulesOf(request.rules) });
}

/** {@link checkLayout} without its door. */
export function layoutFindings(request: Omit<LayoutCheck, 'rules'> & { readonly rules: RuleSet }): Finding[] {
  const { room, layout, boards, rules, lining = [] } = request;
  const located = locateZones(room, request.joists, rules);
  const ceilings = ceilingParts(room, layout, boards, located, rules);
  const rows = rowsOfParts(ceilings);
  const parts = ceilings.map((ceiling, part) => {
    const views = viewsOf(ceiling);
    return { ceiling, views, structure: structureOf(ceiling, views, rows[part]) };
  });
  const work: Work = { rules, about: ceilings.flatMap(({ about }) => about), given: { room, layout } };
  return inOrderOfSeverity([
    ...parts.flatMap(({ ceiling, views, structure }) => [
      ...coverGaps(ceiling, views),
      ...overlaps(ceiling, views),
      ...wallGaps(ceiling, structure),
      ...bearings(ceiling, structure),
      ...staggers(ceiling, structure),
      ...sizes(ceiling, structure),
      ...necks(ceiling),
    ]),
    ...cutting(work, boards),
    ...claims(work, parts, boards),
    ...parts.flatMap(({ ceiling, structure }) => [
      ...wideBays(ceiling, structure),
      ...overhangs(ceiling, structure),
      ...nearby(ceiling, structure, lining),
    ]),
    ...located.flatMap(({ findings }) => findings),
  ]);
}
