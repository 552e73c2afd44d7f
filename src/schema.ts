import * as z from 'zod/mini';
import { overridesSchema, ruleSetSchema, rulesInputSchema, sourceSchema } from './rules/schemas.js';
import { admit } from './survey/door.js';
import {
  boardStockSchema,
  boardsSchema,
  joistDescriptionSchema,
  joistSchema,
  layerSchema,
  liningSchema,
  markSchema,
  openingSchema,
  outlineSchema,
  pointSchema,
  roomSchema,
} from './survey/schemas.js';

export {
  boardStockSchema,
  boardsSchema,
  joistDescriptionSchema,
  joistSchema,
  layerSchema,
  liningSchema,
  markSchema,
  openingSchema,
  outlineSchema,
  overridesSchema,
  pointSchema,
  roomSchema,
  ruleSetSchema,
  rulesInputSchema,
  sourceSchema,
};

/** What {@link jsonSchema} can describe. */
export type SchemaName =
  | 'boardStock'
  | 'boards'
  | 'joist'
  | 'joists'
  | 'layer'
  | 'lining'
  | 'mark'
  | 'opening'
  | 'outline'
  | 'overrides'
  | 'point'
  | 'room'
  | 'ruleSet'
  | 'rules'
  | 'source';

const named: Readonly<Record<SchemaName, z.ZodMiniType>> = {
  boardStock: boardStockSchema,
  boards: boardsSchema,
  joist: joistSchema,
  joists: joistDescriptionSchema,
  layer: layerSchema,
  lining: liningSchema,
  mark: markSchema,
  opening: openingSchema,
  outline: outlineSchema,
  overrides: overridesSchema,
  point: pointSchema,
  room: roomSchema,
  ruleSet: ruleSetSchema,
  rules: rulesInputSchema,
  source: sourceSchema,
};

/**
 * The JSON Schema (draft 2020-12) of one input, for editors, forms and other languages.
 *
 * It says what JSON Schema can say: fields, types and ranges. That an outline does not cross itself, or that a room is not given
 * in metres, is only checked by the functions that take it.
 *
 * @param name - which input
 * @returns plain JSON, a new object at each call; parts that have a name of their own are under `$defs`
 * @throws InputError for a name that does not exist
 * @example
 * ```ts
 * import { jsonSchema } from 'soffitwright/schema';
 *
 * console.log(jsonSchema('point').$defs.point.required);
 * // [ 'x', 'y' ]
 * ```
 */
export function jsonSchema(name: SchemaName): JsonSchema {
  admit(z.enum(Object.keys(named)), name, 'name');
  // A registry of our own: zod's is shared with the host program.
  const names = z.registry<{ id: string }>();
  for (const [id, schema] of Object.entries(named)) names.add(schema, { id });
  return JSON.parse(JSON.stringify(z.toJSONSchema(named[name], { metadata: names })));
}

/** A JSON Schema whose parts are under `$defs`, by name. */
export interface JsonSchema {
  readonly $schema: string;
  readonly $ref: string;
  readonly $defs: Readonly<Record<string, { readonly [keyword: string]: unknown }>>;
}
