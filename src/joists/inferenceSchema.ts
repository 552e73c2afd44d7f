import * as z from 'zod/mini';
import { joistSchema, label, markSchema, notNegative, positive, probability, roomSchema } from '../survey/schemas.js';
import type { Inference } from './inferJoists.js';

const placeSchema = z.nullable(z.looseObject({ joist: z.int(), off: z.number() }));
const direction = z.enum(['x', 'y']);

const hypothesisSchema = z.looseObject({
  probability,
  direction,
  family: z.enum(['usual', 'other', 'irregular']),
  spacing: positive,
  straying: notNegative,
  drift: notNegative,
  skew: notNegative,
  fan: notNegative,
  places: z.array(placeSchema),
  doubled: z.array(z.int()),
});

const assumptionsSchema = z.looseObject({
  spread: z.record(label, positive),
  usual: z.array(z.looseObject({ spacing: positive, weight: positive })).check(z.minLength(1)),
  missing: probability,
  falseMiss: probability,
  falseHit: probability,
  wander: positive,
});

/** What `inferJoists` returned: the fields that are read are of the right type, all others are let through. */
export const inferenceSchema: z.ZodMiniType<Inference> = z.looseObject({
  room: roomSchema,
  marks: z.array(markSchema).check(z.minLength(1), z.maxLength(1000)),
  direction,
  joists: z.array(joistSchema),
  hypotheses: z.array(hypothesisSchema).check(z.maxLength(1000)),
  assumptions: assumptionsSchema,
  width: z.looseObject({ value: positive, sd: notNegative }),
}) as unknown as z.ZodMiniType<Inference>;
