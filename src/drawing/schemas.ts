import * as z from 'zod/mini';
import type { CeilingPlan } from '../plan/ceilingPlan.js';
import { sourceSchema } from '../rules/schemas.js';
import {
  coordinate,
  joistSchema,
  label,
  liningSchema,
  notNegative,
  pointSchema,
  positive,
  probability,
} from '../survey/schemas.js';
import { LAYERS } from './ink.js';
import type { CutListOptions, CuttingOptions, DrawOptions } from './options.js';
import type { TableOptions } from './table.js';
import { drawingWords, type WordKey } from './words.js';

const outline = z.array(pointSchema).check(z.minLength(3), z.maxLength(2000));

const end = z.looseObject({
  meets: z.enum(['board', 'wall', 'opening']),
  joist: z.optional(z.string()),
  position: coordinate,
  made: z.enum(['factory', 'cut']),
  rake: z.optional(coordinate),
});

const edge = z.enum(['bound', 'cut']);

const piece = z.looseObject({
  id: label,
  row: z.int(),
  outline,
  holes: z.optional(z.array(outline)),
  length: notNegative,
  cutLength: notNegative,
  width: notNegative,
  edgeLengths: z.optional(z.looseObject({ low: notNegative, high: notNegative })),
  zone: z.optional(label),
  hand: z.optional(z.looseObject({ outline })),
  board: label,
  at: z.looseObject({ along: coordinate, across: coordinate }),
  ends: z.tuple([end, end]),
  edges: z.looseObject({ low: edge, high: edge }),
  tight: z.boolean(),
  massKg: notNegative,
  locked: z.optional(z.boolean()),
});

const offcut = z.looseObject({ board: label, length: notNegative, width: notNegative });
const cut = z.looseObject({ kind: z.enum(['cross', 'rip']), at: coordinate, from: coordinate, to: coordinate });
const board = z.looseObject({
  id: label,
  stock: label,
  cuts: z.array(cut),
  offcuts: z.array(offcut),
  opened: z.optional(z.boolean()),
});

const stock = z.looseObject({ id: label, length: positive, width: positive, thickness: positive });

const opening = z.union([
  z.looseObject({ id: z.optional(label), kind: z.string(), outline }),
  z.looseObject({ id: z.optional(label), kind: z.string(), centre: pointSchema, diameter: notNegative }),
]);

const wall = z.looseObject({
  edge: z.int().check(z.gte(0)),
  name: z.optional(label),
  window: z.optional(z.boolean()),
  door: z.optional(z.boolean()),
});

const zone = z.looseObject({
  id: label,
  outline,
  joists: z.union([z.array(z.looseObject({ id: label })), z.looseObject({})]),
});

const room = z.looseObject({
  id: z.optional(label),
  name: z.optional(label),
  outline,
  openings: z.optional(z.array(opening)),
  walls: z.optional(z.array(wall)),
  zones: z.optional(z.array(zone)),
});

const severity = z.enum(['hold', 'error', 'warning', 'note']);

const rule = z.looseObject({
  title: z.string(),
  sense: z.string(),
  rows: z.array(z.looseObject({ value: z.nullable(z.number()), source: sourceSchema })),
});

/** Only the rules that a table quotes: a plan that was kept may be older than a rule. */
const rules = z.looseObject({
  title: z.string(),
  rules: z.looseObject({
    'fixing.field': rule,
    'fixing.boardEnd': rule,
    'fixing.perimeter': rule,
    'piece.minimumLength': rule,
    'row.minimumWidth': rule,
  }),
});

const noFixZone = z.union([
  z.strictObject({ id: z.optional(label), outline }),
  z.strictObject({ id: z.optional(label), centre: pointSchema, diameter: positive }),
]);

/** What this library itself returned: the fields that a drawing or a table reads are checked, all others let through. */
export const planSchema: z.ZodMiniType<CeilingPlan> = z.looseObject({
  job: z.looseObject({
    lining: liningSchema,
    boards: z.array(stock).check(z.minLength(1)),
    rules,
    noFix: z.optional(z.array(noFixZone)),
  }),
  room,
  joists: z.array(joistSchema).check(z.minLength(1), z.maxLength(2000)),
  layout: z.looseObject({
    pieces: z.array(piece).check(z.maxLength(5000)),
    boards: z.array(board),
    rows: z.array(z.looseObject({ row: z.int(), low: coordinate, high: coordinate })),
    boardsByStock: z.array(z.looseObject({ stock: z.string(), count: z.int() })),
  }),
  fixings: z.looseObject({
    positions: z.array(z.looseObject({ x: coordinate, y: coordinate, piece: z.string(), joist: z.string() })),
    lines: z.array(z.looseObject({ piece: z.string(), joist: z.string(), count: z.int(), text: z.string() })),
    count: z.int(),
  }),
  fixingLength: z.looseObject({
    findings: z.array(z.looseObject({ message: z.string(), remedy: z.optional(z.string()) })),
    recommended: z.nullable(notNegative),
    embedment: z.nullable(z.number()),
    range: z.optional(z.looseObject({ shortest: z.nullable(notNegative), longest: z.nullable(notNegative) })),
  }),
  takeOff: z.looseObject({ lines: z.array(z.looseObject({ item: z.string(), quantity: notNegative })) }),
  confidence: z.looseObject({ onTimber: probability, withinEdgeRules: probability }),
  certainty: z.optional(
    z.array(z.looseObject({ joist: label, certainty: z.enum(['sure', 'check', 'prove first']), probability })),
  ),
  proveFirst: z.array(z.string()),
  findings: z.array(z.looseObject({ code: z.string(), severity, message: z.string() })),
  meta: z.looseObject({ held: z.boolean(), direction: z.enum(['x', 'y']) }),
}) as unknown as z.ZodMiniType<CeilingPlan>;

const word = z.string().check(z.maxLength(500));

export const messagesSchema = z.strictObject(
  Object.fromEntries((Object.keys(drawingWords) as WordKey[]).map((key) => [key, z.optional(word)])),
);

export const unitsSchema = z.enum(['mm', 'inch']);

export const cuttingOptionsSchema: z.ZodMiniType<CuttingOptions> = z.strictObject({
  view: z.optional(z.enum(['reflected', 'looking-up'])),
  sheet: z.optional(z.int().check(z.gte(1), z.lte(1000))),
  units: z.optional(unitsSchema),
  messages: z.optional(messagesSchema),
}) as unknown as z.ZodMiniType<CuttingOptions>;

export const drawOptionsSchema: z.ZodMiniType<DrawOptions> = z.strictObject({
  view: z.optional(z.enum(['reflected', 'looking-up'])),
  scale: z.optional(z.number().check(z.gte(1), z.lte(1000))),
  paper: z.optional(z.enum(['A4', 'A3'])),
  layers: z.optional(z.array(z.enum(LAYERS))),
  units: z.optional(unitsSchema),
  noFix: z.optional(z.array(noFixZone)),
  messages: z.optional(messagesSchema),
}) as unknown as z.ZodMiniType<DrawOptions>;

export const tableOptionsSchema: z.ZodMiniType<TableOptions> = z.strictObject({
  units: z.optional(unitsSchema),
  messages: z.optional(messagesSchema),
}) as unknown as z.ZodMiniType<TableOptions>;

export const cutListOptionsSchema: z.ZodMiniType<CutListOptions> = z.strictObject({
  units: z.optional(unitsSchema),
  messages: z.optional(messagesSchema),
  order: z.optional(z.enum(['cutting', 'fixing'])),
}) as unknown as z.ZodMiniType<CutListOptions>;
