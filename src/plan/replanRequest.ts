import * as z from 'zod/mini';
import { preferenceSchema } from '../boards/preference.js';
import { ruleSetSchema } from '../rules/schemas.js';
import {
  boardsSchema,
  coordinate,
  joistSchema,
  label,
  liningSchema,
  outlineSchema,
  positive,
  roomSchema,
} from '../survey/schemas.js';
import { takeOffOptionsSchema } from '../takeoff/takeOffOptions.js';
import type { CeilingPlan } from './ceilingPlan.js';
import { fixingInputs } from './fixCeiling.js';

/** A joist that was found elsewhere than planned, or where none was planned. Plan coordinates across the joists, mm. */
export interface FoundJoist {
  /** Id of the joist; one that the plan does not have is added. */
  readonly joist: string;
  /** Where its middle is, all along it. */
  readonly at?: number;
  /** Where its middle is at its `start` and at its `end`, in place of `at`. */
  readonly atStart?: number;
  readonly atEnd?: number;
  /** mm, where it was measured. */
  readonly width?: number;
}

/** An offcut or a cut piece that lies there, mm. An offcut of a layout will do. */
export interface OffcutAtHand {
  readonly id?: string;
  /** Along its bound edges, as it would lie across the joists. */
  readonly length: number;
  readonly width: number;
}

/** What has happened since a ceiling was planned; ids are those of the plan. */
export interface Replanning {
  /** Pieces that are up. */
  readonly fixed?: readonly string[];
  /** Pieces that are cut and lie there: they are stock, and go where they were meant to go if that can be. */
  readonly cut?: readonly string[];
  /** Boards of which nothing more can be used, and pieces that broke. */
  readonly spoiled?: readonly string[];
  readonly found?: readonly FoundJoist[];
  /** Joists that are not there. */
  readonly missing?: readonly string[];
  readonly offcutsAtHand?: readonly OffcutAtHand[];
  /** How many uncut boards of a stock can still be had, those that lie there included; by the stock's id. */
  readonly available?: Readonly<Record<string, number>>;
}

const ids = z.optional(z.array(label).check(z.maxLength(20_000)));

export const replanningSchema: z.ZodMiniType<Replanning> = z.strictObject({
  fixed: ids,
  cut: ids,
  spoiled: ids,
  found: z.optional(
    z
      .array(
        z.strictObject({
          joist: label,
          at: z.optional(coordinate),
          atStart: z.optional(coordinate),
          atEnd: z.optional(coordinate),
          width: z.optional(z.number().check(z.gte(10), z.lte(1000))),
        }),
      )
      .check(z.maxLength(2000)),
  ),
  missing: ids,
  offcutsAtHand: z.optional(
    z.array(z.looseObject({ id: z.optional(label), length: positive, width: positive })).check(z.maxLength(200)),
  ),
  available: z.optional(z.record(label, z.int().check(z.gte(0), z.lte(1e6)))),
});

const placeSchema = z.looseObject({ along: coordinate, across: coordinate });
const endSchema = z.looseObject({ meets: z.enum(['board', 'wall', 'opening']), position: coordinate });
const pieceSchema = z.looseObject({
  id: label,
  row: z.int().check(z.gte(1)),
  outline: outlineSchema,
  holes: z.optional(z.array(z.array(z.strictObject({ x: coordinate, y: coordinate })))),
  length: positive,
  cutLength: positive,
  width: positive,
  board: label,
  at: placeSchema,
  ends: z.tuple([endSchema, endSchema]),
});

/** What this library itself returned: known fields are checked, fields it does not read are let through. */
export const replannedPlanSchema = z.looseObject({
  job: z.looseObject({
    room: roomSchema,
    // None where only the zones are boarded.
    joists: z.array(joistSchema).check(z.maxLength(2000)),
    lining: liningSchema,
    boards: boardsSchema,
    rules: ruleSetSchema,
    prefer: preferenceSchema,
    takeOff: z.optional(takeOffOptionsSchema),
    ...fixingInputs,
  }),
  layout: z.looseObject({
    pieces: z.array(pieceSchema).check(z.maxLength(20_000)),
    boards: z.array(z.looseObject({ id: label, stock: label })).check(z.maxLength(20_000)),
    rows: z
      .array(z.looseObject({ row: z.int(), low: coordinate, high: coordinate, width: positive }))
      .check(z.minLength(1), z.maxLength(2000)),
  }),
}) as unknown as z.ZodMiniType<CeilingPlan>;
