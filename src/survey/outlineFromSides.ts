import * as z from 'zod/mini';
import { admit } from './door.js';
import { snap } from './grid.js';
import { InputError, type Problem, problem } from './inputError.js';
import type { Point } from './point.js';
import { positive } from './schemas.js';

/** What {@link outlineFromSides} takes, mm. */
export interface TapedSides {
  /** The four walls in walking order from the origin corner, the room on the left: the first runs along x. */
  readonly sides: readonly number[];
  /**
   * One or two. The first is from the origin corner to the corner between the second wall and the third, the second from the corner
   * between the first wall and the second to the corner between the third and the fourth.
   */
  readonly diagonals: readonly number[];
}

/** A four-sided room as taped, and how well its measurements agree. */
export interface TapedOutline {
  /** Four corners, anticlockwise on the plan, the first at (0, 0) and the second on the x axis, mm. */
  readonly outline: readonly Point[];
  /** How far the second diagonal, as taped, is from that of the outline, mm; 0 where there is none to check by. */
  readonly closingError: number;
  /** Whether a second diagonal checked the others. */
  readonly checked: boolean;
  /**
   * The most that a wall is out over its length, mm: the second and the fourth out of square to the first wall, the third out of line
   * with it.
   */
  readonly outOfSquare: number;
}

const requestSchema: z.ZodMiniType<TapedSides> = z.strictObject({
  sides: z.array(positive).check(z.minLength(4), z.maxLength(4)),
  diagonals: z.array(positive).check(z.minLength(1), z.maxLength(2)),
});

/**
 * The outline of a four-sided room from its walls and one or two diagonals as they were taped.
 *
 * Walk round the room with it on your left, from the origin corner: `sides` are the walls as you pass them. The first diagonal is from
 * the origin corner to the one across the room, where the second wall ends; the second joins the other two corners. Walls and the
 * first diagonal give the outline, exactly. The second diagonal changes nothing: it checks the others, and `closingError` is how far
 * it is off. Nothing is averaged: where the error is too large to be left in the wall gaps, tape again.
 *
 * @param request - four walls and one or two diagonals, mm
 * @returns outline, closing error and how far the wall that strays most is out of square, mm
 * @throws InputError when a length is missing or out of range, or when walls and first diagonal do not close: two walls that together
 *   are no longer than the diagonal they end at, or that differ by as much as it
 * @example
 * ```ts
 * import { outlineFromSides } from 'soffitwright';
 *
 * const { outline, closingError, outOfSquare } = outlineFromSides({ sides: [4200, 3000, 4200, 3000], diagonals: [5120, 5203] });
 * console.log(outline[2], outOfSquare, closingError);
 * // { x: 4149.333, y: 2999.572 } 50.667 0.539
 * ```
 */
export function outlineFromSides(request: TapedSides): TapedOutline {
  admit(requestSchema, request);
  const [[first, second, third, fourth], [diagonal, other]] = [request.sides, request.diagonals];
  const problems = [...notClosing(first, second, diagonal), ...notClosing(third, fourth, diagonal)];
  if (problems.length > 0) throw new InputError(problems);
  // Each corner is where two lengths meet: how far along a line between two corners, and how far to its left.
  const opposite = corner(first, diagonal, second);
  const across = corner(diagonal, fourth, third);
  const last = {
    x: (across.along * opposite.along - across.beside * opposite.beside) / diagonal,
    y: (across.along * opposite.beside + across.beside * opposite.along) / diagonal,
  };
  const outline = [{ x: 0, y: 0 }, { x: first, y: 0 }, { x: opposite.along, y: opposite.beside }, last];
  const [dx, dy] = [last.x - first, last.y];
  const strays = [opposite.along - first, last.x, last.y - opposite.beside];
  return {
    outline: outline.map(({ x, y }) => ({ x: snap(x), y: snap(y) })),
    closingError: other === undefined ? 0 : snap(Math.abs(other - Math.sqrt(dx * dx + dy * dy))),
    checked: other !== undefined,
    outOfSquare: snap(Math.max(...strays.map(Math.abs))),
  };
}

/** A corner this far from the start of a line and that far from its end. */
function corner(line: number, fromStart: number, fromEnd: number): { readonly along: number; readonly beside: number } {
  const along = (line * line + fromStart * fromStart - fromEnd * fromEnd) / (2 * line);
  return { along, beside: Math.sqrt(Math.max(0, fromStart * fromStart - along * along)) };
}

function notClosing(wall: number, next: number, diagonal: number): Problem[] {
  const [least, most] = [snap(Math.abs(wall - next)), snap(wall + next)];
  if (least < snap(diagonal) && snap(diagonal) < most) return [];
  const expected = `more than ${least} and less than ${most}, to close with walls of ${wall} and ${next}`;
  return [problem('sides-not-closing', 'diagonals[0]', expected, String(diagonal))];
}
