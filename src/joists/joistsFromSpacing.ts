import * as z from 'zod/mini';
import { admit } from '../survey/door.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { problem, refuse } from '../survey/inputError.js';
import type { Joist, JoistsBySpacing } from '../survey/joist.js';
import type { Room } from '../survey/room.js';
import { roomSchema, spacingFields } from '../survey/schemas.js';
import { ASSUMED_WIDTH, frameExtent, type JoistsWanted } from './joistLine.js';
import { joistsAt } from './joistsFromPositions.js';

/** What {@link joistsFromSpacing} takes. */
export interface SpacingRequest extends JoistsBySpacing {
  readonly room: Room;
}

const requestSchema: z.ZodMiniType<SpacingRequest> = z.strictObject({ room: roomSchema, ...spacingFields });

/**
 * Joists at even centres, none outside the room.
 *
 * @param request - `first` and `last` are distances in mm from the room's least coordinate across the joists; a regular joist
 *   that would overlap `last` is left out. Width in mm, 47 when not given
 * @returns joists in order across the room, `known: 'given'`, with no spread, each as far as it runs in the room, on a wall too. A
 *   joist that leaves the room and comes back, as beside a chimney breast, is one joist for each stretch: `J3a`, `J3b`
 * @throws InputError when a value is missing, unknown or out of range, when no joist falls in the room, or when `last` does not
 * @example
 * ```ts
 * import { joistsFromSpacing, rectangle } from 'soffitwright';
 *
 * const room = { outline: rectangle(3600, 3000) };
 * const joists = joistsFromSpacing({ room, direction: 'y', first: 25, spacing: 400, last: 3575 });
 * console.log(joists.map((joist) => joist.start.x).join(' '));
 * // 25 425 825 1225 1625 2025 2425 2825 3225 3575
 * ```
 */
export function joistsFromSpacing(request: SpacingRequest): Joist[] {
  admit(requestSchema, request);
  return evenJoists(request.room, request);
}

/** {@link joistsFromSpacing} without its door. */
export function evenJoists(
  room: Room,
  { direction, first, spacing, width, depth, last }: JoistsBySpacing,
  { path = '', ...wanted }: JoistsWanted = {},
): Joist[] {
  const { near, far } = frameExtent(room, direction);
  const end = last === undefined ? far : near + toGrid(last);
  if (end < near || end > far) {
    refuse(problem('joist-outside-room', `${path}last`, `a distance within the room's ${fromGrid(far - near)} mm`, String(last)));
  }
  const centres: number[] = [];
  const clear = last === undefined ? 0 : toGrid(width ?? ASSUMED_WIDTH);
  for (let k = 0; ; k++) {
    const centre = near + toGrid(first + k * spacing);
    if (centre > end - clear) break;
    if (centre >= near) centres.push(centre);
  }
  if (last !== undefined) centres.push(end);
  if (centres.length === 0) {
    refuse(problem('no-joists', `${path}first`, `a first joist within the room's ${fromGrid(far - near)} mm`, String(first)));
  }
  return joistsAt(room, { direction, positions: centres.map(fromGrid), width, depth }, { path, ...wanted });
}
