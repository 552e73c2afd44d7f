import * as z from 'zod/mini';
import { type Finding, finding } from '../rules/finding.js';
import { admit } from '../survey/door.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { coordinate, notNegative } from '../survey/schemas.js';
import { asGiven } from './place.js';

/** What {@link checkStagger} takes. */
export interface StaggerRequest {
  /** Centre lines of the butt joints of each row, mm, rows in order. */
  readonly rows: readonly (readonly number[])[];
  /** Least distance between butt joints of neighbouring rows, mm. */
  readonly minimum: number;
}

const requestSchema: z.ZodMiniType<StaggerRequest> = z.strictObject({
  rows: z.array(z.array(coordinate).check(z.maxLength(2000))).check(z.maxLength(2000)),
  minimum: notNegative,
});

/**
 * Whether the butt joints of neighbouring rows are far enough apart. Equality is enough; joints in line are too near whatever
 * the minimum, for then four corners meet.
 *
 * @param request - positions and minimum in mm
 * @returns one `stagger` finding for each pair that is too near, in the order of the rows; none when all is well
 * @throws InputError when a value is missing, unknown or out of range
 * @example
 * ```ts
 * import { checkStagger } from 'soffitwright';
 *
 * const findings = checkStagger({ rows: [[425, 2825], [1625], [1225]], minimum: 600 });
 * console.log(findings.map(({ value, limit, where }) => `${value} of ${limit} between rows ${where?.row} and 3`).join());
 * // 400 of 600 between rows 2 and 3
 * ```
 */
export function checkStagger(request: StaggerRequest): Finding[] {
  admit(requestSchema, request);
  const { rows, minimum } = request;
  const limit = toGrid(minimum);
  return rows.slice(1).flatMap((upper, i) =>
    rows[i].flatMap((first) =>
      upper.flatMap((second) => {
        const apart = Math.abs(toGrid(first) - toGrid(second));
        if (apart >= limit && apart > 0) return [];
        const words = { joints: `at ${first} in row ${i + 1} and at ${second} in row ${i + 2}` };
        return [
          finding('stagger', 'error', {
            where: { row: i + 1 },
            value: fromGrid(apart),
            limit: minimum,
            unit: 'mm',
            source: asGiven,
            sentence: 'stagger-positions',
            words,
          }),
        ];
      }),
    ),
  );
}
