import { jsonSchema, roomSchema, type SchemaName } from 'soffitwright/schema';
import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';

const names: Record<SchemaName, true> = {
  boardStock: true,
  boards: true,
  joist: true,
  joists: true,
  layer: true,
  lining: true,
  mark: true,
  opening: true,
  outline: true,
  overrides: true,
  point: true,
  room: true,
  ruleSet: true,
  rules: true,
  source: true,
};

/** Every `$ref` in a schema. */
function references(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => (key === '$ref' ? [String(inner)] : references(inner)));
}

describe('jsonSchema', () => {
  it.each(Object.keys(names) as SchemaName[])('describes %s in plain JSON whose references all lead somewhere', (name) => {
    const schema = jsonSchema(name);
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(schema.$ref).toBe(`#/$defs/${name}`);
    expect(structuredClone(schema)).toEqual(schema);
    const known = Object.keys(schema.$defs).map((part) => `#/$defs/${part}`);
    expect(references(schema).filter((reference) => !known.includes(reference))).toEqual([]);
  });

  it('is strict where the functions are strict, and lets through what they let through', () => {
    expect(jsonSchema('room').$defs.room).toMatchObject({ required: ['outline'], additionalProperties: false });
    expect(jsonSchema('boardStock').$defs.boardStock).toMatchObject({
      required: ['id', 'length', 'width', 'thickness', 'massPerArea', 'edge'],
      properties: { length: { type: 'number', minimum: 300, maximum: 10_000 }, edge: { enum: ['square', 'tapered'] } },
    });
    expect(jsonSchema('joist').$defs.joist.additionalProperties).not.toBe(false);
  });

  it('leaves the registry that zod shares with the host program alone', () => {
    jsonSchema('room');
    expect(z.globalRegistry.has(roomSchema)).toBe(false);
  });

  it('refuses a name that does not exist', () => {
    expect(() => jsonSchema('roof' as SchemaName)).toThrow(expect.objectContaining({ name: 'InputError', code: 'not-one-of' }));
  });

  it('gives schemas that check by themselves', () => {
    expect(z.safeParse(roomSchema, { outline: [{ x: 0, y: 0 }] }).success).toBe(false);
  });
});
