import * as z from 'zod/mini';
import { coordinate, label, notNegative, outlineSchema, positive } from '../survey/schemas.js';
import type { LayoutToCheck } from './layoutToCheck.js';

/** What a library returned: known fields must be of the right type, fields that are not read are let through. */
const count = z.int().check(z.gte(0), z.lte(1_000_000));
const amount = z.number().check(z.gte(0), z.lte(1e12));
const side = z.enum(['bound', 'cut']);
const place = z.looseObject({ along: coordinate, across: coordinate });

const endSchema = z.looseObject({
  meets: z.optional(z.enum(['board', 'wall', 'opening'])),
  joist: z.optional(label),
  position: z.optional(coordinate),
  made: z.optional(z.enum(['factory', 'cut'])),
  bearing: z.optional(z.looseObject({ outcome: z.optional(z.enum(['secure', 'tight', 'short', 'off'])) })),
  rake: z.optional(coordinate),
});

const pieceSchema = z.looseObject({
  id: label,
  outline: outlineSchema,
  holes: z.optional(z.array(outlineSchema).check(z.maxLength(500))),
  board: label,
  row: z.optional(count),
  length: z.optional(positive),
  cutLength: z.optional(positive),
  width: z.optional(positive),
  at: z.optional(place),
  ends: z.optional(z.tuple([endSchema, endSchema])),
  edges: z.optional(z.looseObject({ low: side, high: side })),
  tight: z.optional(z.boolean()),
  massKg: z.optional(notNegative),
  edgeLengths: z.optional(z.looseObject({ low: notNegative, high: notNegative })),
  hand: z.optional(z.looseObject({ view: z.literal('face up'), outline: outlineSchema })),
  zone: z.optional(label),
});

const cutSchema = z.looseObject({ kind: z.enum(['cross', 'rip']), at: coordinate, from: coordinate, to: coordinate });

const offcutFields = { length: notNegative, width: notNegative, at: place };

const boardSchema = z.looseObject({
  id: label,
  stock: label,
  cuts: z.optional(z.array(cutSchema).check(z.maxLength(2000))),
  offcuts: z.optional(z.array(z.looseObject(offcutFields)).check(z.maxLength(2000))),
  opened: z.optional(z.boolean()),
});

const rowSchema = z.looseObject({
  row: count,
  low: coordinate,
  high: coordinate,
  width: positive,
  ripped: z.optional(z.boolean()),
  zone: z.optional(label),
});

export const layoutSchema: z.ZodMiniType<LayoutToCheck> = z.looseObject({
  pieces: z.array(pieceSchema).check(z.maxLength(20_000)),
  boards: z.array(boardSchema).check(z.maxLength(20_000)),
  rows: z.optional(z.array(rowSchema).check(z.maxLength(2000))),
  endJoints: z.optional(count),
  boardsBought: z.optional(count),
  boardsAtMinimumLength: z.optional(z.nullable(count)),
  boardsByStock: z.optional(z.array(z.looseObject({ stock: label, count })).check(z.maxLength(50))),
  cost: z.optional(amount),
  areaM2: z.optional(amount),
  wasteAreaM2: z.optional(amount),
  cuts: z.optional(count),
  jointLength: z.optional(amount),
  bound: z.optional(count),
  costBound: z.optional(amount),
  proven: z.optional(z.boolean()),
  offcuts: z.optional(z.array(z.looseObject({ ...offcutFields, board: label })).check(z.maxLength(20_000))),
}) as unknown as z.ZodMiniType<LayoutToCheck>;
