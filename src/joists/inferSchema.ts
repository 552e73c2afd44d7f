import * as z from 'zod/mini';
import { demand } from '../survey/door.js';
import { markSchema, roomSchema } from '../survey/schemas.js';
import type { Assumptions } from './assumptions.js';
import type { InferRequest } from './inference.js';

const positiveNumber = z.number().check(z.gt(0), z.lte(10_000));
const zeroUp = z.number().check(z.gte(0), z.lte(10_000));
const share = z.number().check(z.gte(0), z.lt(1));
const deviations = z.array(zeroUp).check(z.minLength(1), z.maxLength(12));

/** The schema of {@link Assumptions}, every part of which may be left out. */
const assumeSchema: z.ZodMiniType<Partial<Assumptions>> = z.strictObject({
  spread: z.optional(
    z.strictObject({
      probe: positiveNumber,
      'near-edge': positiveNumber,
      'far-edge': positiveNumber,
      fixing: positiveNumber,
      detector: positiveNumber,
      loft: positiveNumber,
    }),
  ),
  usual: z.optional(
    z
      .array(z.strictObject({ spacing: z.number().check(z.gte(150), z.lte(1300)), weight: positiveNumber }))
      .check(z.minLength(1), z.maxLength(30)),
  ),
  otherSpacing: z.optional(share),
  irregular: z.optional(share),
  spacingSd: z.optional(zeroUp),
  straying: z.optional(deviations),
  drift: z.optional(deviations),
  irregularDrift: z.optional(deviations),
  skew: z.optional(zeroUp),
  skewAskew: z.optional(zeroUp),
  fan: z.optional(zeroUp),
  askew: z.optional(share),
  fanned: z.optional(share),
  ownSkew: z.optional(zeroUp),
  spurious: z.optional(share),
  repeated: z.optional(share),
  missing: z.optional(share),
  doubled: z.optional(share),
  width: z.optional(positiveNumber),
  widthSd: z.optional(zeroUp),
  givenWidthSd: z.optional(zeroUp),
  ownWidthSd: z.optional(zeroUp),
  falseMiss: z.optional(share),
  falseHit: z.optional(share),
  wander: z.optional(positiveNumber),
  shorterWay: z.optional(share),
});

/** The schema of {@link InferRequest}. */
export const inferSchema: z.ZodMiniType<InferRequest> = z.strictObject({
  room: roomSchema,
  marks: z.array(markSchema).check(z.minLength(1), z.maxLength(1000)),
  direction: z.optional(z.enum(['x', 'y'])),
  spacings: z.optional(
    z.array(z.number().check(z.gte(150), z.lte(1300))).check(
      z.minLength(1),
      z.maxLength(30),
      demand((spacings) => new Set(spacings).size === spacings.length, 'repeated-spacing', 'each spacing once'),
    ),
  ),
  width: z.optional(z.number().check(z.gte(10), z.lte(1000))),
  assume: z.optional(assumeSchema),
});
