import { attemptPlacement } from './attemptPlacement.js';
import type { BoardLayout } from './boardLayout.js';
import type { PlacementAttempt } from './infeasibleError.js';
import { placeBoards } from './placeBoards.js';
import type { PlacementRequest } from './placementRequest.js';

/**
 * {@link placeBoards}, but what goes wrong is returned and not thrown.
 *
 * @param request - as for `placeBoards`, lengths in mm
 * @returns `{ ok: true, value }`, or `{ ok: false, reason }` with the problems of the input, or with what stands in the way
 * @example
 * ```ts
 * import { rectangle, tryPlaceBoards } from 'soffitwright';
 *
 * const attempt = tryPlaceBoards({
 *   room: { outline: rectangle(3600, 3000) },
 *   joists: { direction: 'y', positions: [300, 3300], width: 47 },
 *   boards: [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
 * });
 * console.log(attempt.ok ? 'laid' : attempt.reason);
 * // infeasible
 * ```
 */
export const tryPlaceBoards = (request: PlacementRequest): PlacementAttempt<BoardLayout> =>
  attemptPlacement(() => placeBoards(request));
