import * as z from 'zod/mini';
import { demand } from '../survey/door.js';
import { type Conditions, RULE_KEYS, type RuleKey, type RuleSet } from './ruleSet.js';
import type { Overrides, RulesInput } from './rulesInput.js';
import type { Source } from './source.js';

export const ruleKeySchema: z.ZodMiniType<RuleKey> = z.enum(RULE_KEYS);

const ruleNumber = z.number().check(z.gte(0), z.lte(1_000_000));

export const sourceSchema: z.ZodMiniType<Source> = z.strictObject({
  standard: z.string().check(z.minLength(1)),
  edition: z.optional(z.string()),
  clause: z.optional(z.string()),
  standing: z.enum(['read', 'secondary', 'practice', 'memory', 'derived']),
});

export const conditionsSchema: z.ZodMiniType<Conditions> = z.strictObject({
  fixing: z.optional(z.enum(['screw', 'nail'])),
  boardThickness: z.optional(ruleNumber),
  centres: z.optional(ruleNumber),
  orientation: z.optional(z.enum(['across', 'along'])),
  noggings: z.optional(z.boolean()),
  layer: z.optional(z.int().check(z.gte(1), z.lte(9))),
  adhesive: z.optional(z.boolean()),
  fireRating: z.optional(ruleNumber),
  shank: z.optional(z.enum(['smooth', 'ringed'])),
  finish: z.optional(z.enum(['painted', 'textured'])),
  board: z.optional(z.enum(['standard', 'sag-resistant'])),
  diaphragm: z.optional(z.boolean()),
});

const override = z.union([ruleNumber, z.strictObject({ value: ruleNumber, source: z.optional(sourceSchema) })]);

export const overridesSchema: z.ZodMiniType<Overrides> = z.strictObject(
  Object.fromEntries(RULE_KEYS.map((key) => [key, z.optional(override)])),
) as unknown as z.ZodMiniType<Overrides>;

const row = z.strictObject({
  value: z.nullable(ruleNumber),
  range: z.optional(z.strictObject({ least: ruleNumber, greatest: ruleNumber })),
  when: z.optional(conditionsSchema),
  source: sourceSchema,
  note: z.optional(z.string()),
});

const rule = z.strictObject({
  title: z.string(),
  unit: z.enum(['mm', 'kg', 'joists']),
  sense: z.enum(['at least', 'at most', 'nominal']),
  level: z.enum(['must', 'should']),
  rows: z.array(row).check(demand((rows) => rows.length > 0, 'too-small', 'at least one row')),
});

export const ruleSetSchema: z.ZodMiniType<RuleSet> = z.strictObject({
  id: z.string().check(z.minLength(1)),
  title: z.string(),
  notes: z.optional(z.array(z.string())),
  rules: z.strictObject(Object.fromEntries(RULE_KEYS.map((key) => [key, rule]))),
}) as unknown as z.ZodMiniType<RuleSet>;

export const rulesInputSchema: z.ZodMiniType<RulesInput> = z.union([overridesSchema, ruleSetSchema]);
