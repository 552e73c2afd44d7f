import * as z from 'zod/mini';
import { admit } from '../survey/door.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { InputError, type Problem, problem, refuse } from '../survey/inputError.js';
import type { Joist, JoistPosition, JoistsByPositions } from '../survey/joist.js';
import type { Room } from '../survey/room.js';
import { positionFields, roomSchema } from '../survey/schemas.js';
import { ASSUMED_WIDTH, frameExtent, type JoistsWanted, joistLine } from './joistLine.js';

/** What {@link joistsFromPositions} takes. */
export interface PositionsRequest extends JoistsByPositions {
  readonly room: Room;
}

const requestSchema: z.ZodMiniType<PositionsRequest> = z.strictObject({ room: roomSchema, ...positionFields });

/**
 * Joists at measured positions.
 *
 * @param request - positions are plan coordinates in mm on the axis that the joists do not run along, in any order; a position
 *   with `atStart` and `atEnd` is that of the centre at the room's least and greatest coordinate along the joists
 * @returns joists in order across the room, `known: 'given'`, with no spread, each as far as it runs in the room, on a wall too. A
 *   joist that leaves the room and comes back, as beside a chimney breast, is one joist for each stretch: `J3a`, `J3b`
 * @throws InputError when a value is missing, unknown or out of range, lies outside the room, or is given twice
 * @example
 * ```ts
 * import { joistsFromPositions, rectangle } from 'soffitwright';
 *
 * const room = { outline: rectangle(3600, 3000) };
 * const joists = joistsFromPositions({ room, direction: 'y', positions: [3575, 25, { atStart: 1800, atEnd: 1812 }] });
 * console.log(joists.map((joist) => joist.id + ' ' + joist.end.x).join(', '));
 * // J1 25, J2 1812, J3 3575
 * ```
 */
export function joistsFromPositions(request: PositionsRequest): Joist[] {
  admit(requestSchema, request);
  return joistsAt(request.room, request);
}

/** {@link joistsFromPositions} without its door. */
export function joistsAt(
  room: Room,
  { direction, positions, width, depth }: JoistsByPositions,
  { path = '', prefix = '', area }: JoistsWanted = {},
): Joist[] {
  const { near, far } = frameExtent(room, direction);
  const ends = positions.map((position) => bothEnds(position));
  const problems: Problem[] = [];
  ends.forEach(([atStart, atEnd], index) => {
    if (Math.min(toGrid(atStart), toGrid(atEnd)) < near || Math.max(toGrid(atStart), toGrid(atEnd)) > far) {
      problems.push(
        problem(
          'joist-outside-room',
          `${path}positions[${index}]`,
          `a place within the room, ${fromGrid(near)} to ${fromGrid(far)}`,
          `${atStart}`,
        ),
      );
    }
  });
  if (problems.length > 0) throw new InputError(problems);
  const order = ends.map((_, index) => index).sort((a, b) => ends[a][0] + ends[a][1] - ends[b][0] - ends[b][1] || a - b);
  order.forEach((index, place) => {
    const before = place > 0 ? ends[order[place - 1]] : undefined;
    if (before && before[0] === ends[index][0] && before[1] === ends[index][1]) {
      refuse(problem('repeated-joist', `${path}positions[${index}]`, 'each joist once', String(ends[index][0])));
    }
  });
  const facts = {
    width: width ?? ASSUMED_WIDTH,
    ...(depth !== undefined && { depth }),
    sd: 0,
    presence: 1,
    known: 'given' as const,
  };
  return order.flatMap((index, place) => {
    const [atStart, atEnd] = ends[index];
    return joistLine(room, direction, { atStart, atEnd }, { id: `${prefix}J${place + 1}`, ...facts }, area).map(
      ({ joist }) => joist,
    );
  });
}

const bothEnds = (position: JoistPosition): readonly [number, number] =>
  typeof position === 'number' ? [position, position] : [position.atStart, position.atEnd];
