import { admit } from './door.js';
import type { Point } from './point.js';
import { rectangleSchema } from './schemas.js';

/**
 * The outline of a rectangular room with its least corner at (0, 0).
 *
 * @param width - mm along x
 * @param depth - mm along y
 * @returns four corners, anticlockwise on the plan
 * @throws InputError when a side is not a positive, finite number of mm
 * @example
 * ```ts
 * import { rectangle } from 'soffitwright';
 *
 * console.log(rectangle(3600, 3000).length);
 * // 4
 * ```
 */
export function rectangle(width: number, depth: number): Point[] {
  admit(rectangleSchema, { width, depth });
  return [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: depth },
    { x: 0, y: depth },
  ];
}
