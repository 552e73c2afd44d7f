import * as z from 'zod/mini';
import { admit, demand } from '../survey/door.js';
import { toGrid } from '../survey/grid.js';
import { notNegative, positive } from '../survey/schemas.js';

/** What {@link fixingsPerLine} takes. */
export interface FixingsPerLineRequest {
  /** Length of the line: the width of a board laid across the joist, mm. */
  readonly width: number;
  /** Greatest distance between fixings, mm. */
  readonly spacing: number;
  /** First and last fixing from the edge, mm. */
  readonly edgeDistance: number;
}

/** Fixings evenly along one line. */
export interface FixingsPerLine {
  readonly count: number;
  /** From each fixing to the next, mm; 0 when there is only one. */
  readonly pitch: number;
  /** First fixing from the edge, mm. */
  readonly first: number;
}

const requestSchema: z.ZodMiniType<FixingsPerLineRequest> = z
  .strictObject({
    width: positive,
    spacing: z.number().check(z.gte(1), z.lte(1_000_000)),
    edgeDistance: notNegative,
  })
  .check(
    demand(
      ({ width, edgeDistance }) => 2 * toGrid(edgeDistance) <= toGrid(width),
      'edges-too-far',
      'an edge distance of at most half the width',
      ({ width, edgeDistance }) => `${edgeDistance} of ${width}`,
    ),
  );

/**
 * How many fixings a board takes on one joist so that no two are further apart than the spacing.
 *
 * @param request - width of the board, spacing and edge distance in mm; the edge distance is used as it is
 * @returns count, and pitch and first fixing in mm
 * @throws InputError when a value is missing, unknown or out of range
 * @example
 * ```ts
 * import { fixingsPerLine } from 'soffitwright';
 *
 * console.log(fixingsPerLine({ width: 1200, spacing: 300, edgeDistance: 10 }));
 * // { count: 5, pitch: 295, first: 10 }
 * ```
 */
export function fixingsPerLine(request: FixingsPerLineRequest): FixingsPerLine {
  admit(requestSchema, request);
  return perLine(request);
}

/** {@link fixingsPerLine} without its door. */
export function perLine({ width, spacing, edgeDistance }: FixingsPerLineRequest): FixingsPerLine {
  const between = toGrid(width) - 2 * toGrid(edgeDistance);
  const steps = Math.ceil(between / toGrid(spacing));
  return { count: steps + 1, pitch: steps === 0 ? 0 : between / steps / 1000, first: edgeDistance };
}
