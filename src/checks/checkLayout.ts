import * as z from 'zod/mini';
import { frameOf } from '../joists/frame.js';
import { locateJoists } from '../joists/locateJoists.js';
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
import { ceilingOf } from './ceiling.js';
import { claims } from './claims.js';
import { coverGaps } from './coverGaps.js';
import { cutting } from './cutting.js';
import { layoutSchema } from './layoutSchema.js';
import type { LayoutToCheck } from './layoutToCheck.js';
import { nearby } from './nearby.js';
import { overlaps } from './overlaps.js';
import { sizes } from './sizes.js';
import { spans } from './spans.js';
import { staggers } from './staggers.js';
import { structureOf } from './structure.js';
import { viewsOf } from './views.js';
import { wallGaps } from './wallGaps.js';

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
 * Looked for: parts not covered, pieces over each other, beyond the walls or over openings; board ends and the timber under
 * them; stagger; pieces and rows that are too small; pieces on one joist; boards that cannot give their pieces; stock; long way
 * along the joists; bays and overhangs; old joints, openings and hatch corners; weight; claims.
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
  const { joists, direction, findings } = locateJoists(room, request.joists, rules);
  const ceiling = ceilingOf(room, layout, boards, joists, frameOf(direction), rules);
  const views = viewsOf(ceiling);
  const structure = structureOf(ceiling, views);
  return inOrderOfSeverity([
    ...coverGaps(ceiling, views),
    ...overlaps(ceiling, views),
    ...wallGaps(ceiling, structure),
    ...bearings(ceiling, structure),
    ...staggers(ceiling, structure),
    ...sizes(ceiling, structure),
    ...cutting(ceiling, boards),
    ...claims(ceiling, structure, boards),
    ...spans(ceiling, structure),
    ...nearby(ceiling, structure, lining),
    ...findings,
  ]);
}
