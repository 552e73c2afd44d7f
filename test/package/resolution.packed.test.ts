import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import ts from 'typescript';
import { describe, expect, inject, it } from 'vitest';
import { virtualProgram } from './virtualProgram.js';

const consumer = inject('consumer');
const dist = join(consumer, 'node_modules/soffitwright/dist');

const program = `
import { type Joist, joistsFromSpacing, rectangle } from 'soffitwright';
import * as drawing from 'soffitwright/drawing';
import { jsonSchema, roomSchema } from 'soffitwright/schema';

const room = { outline: rectangle(3600, 3000) };
const joists: Joist[] = joistsFromSpacing({ room, direction: 'y', first: 25, spacing: 400 });
export const all: [number, string, unknown, unknown] = [joists[0].start.x, jsonSchema('room').$ref, roomSchema, drawing];
`;
const mistakes = `
import { rectangle } from 'soffitwright';
import { jsonSchema } from 'soffitwright/schema';

rectangle('3600', 3000);
jsonSchema('roof');
`;
const coreOnly = "import * as core from 'soffitwright';\nexport const all: object = core;\n";

const modes: Record<string, { file: string; options: ts.CompilerOptions }> = {
  'node10, by typesVersions': {
    file: 'node10.ts',
    options: {
      module: ts.ModuleKind.CommonJS,
      moduleResolution: ts.ModuleResolutionKind.Node10,
      ignoreDeprecations: '6.0',
    },
  },
  'node16, CommonJS': { file: 'node16.cts', options: { module: ts.ModuleKind.Node16 } },
  'node16, ES modules': { file: 'node16.mts', options: { module: ts.ModuleKind.Node16 } },
  'nodenext, CommonJS': { file: 'nodenext.cts', options: { module: ts.ModuleKind.NodeNext } },
  'nodenext, ES modules': { file: 'nodenext.mts', options: { module: ts.ModuleKind.NodeNext } },
  bundler: {
    file: 'bundler.ts',
    options: { module: ts.ModuleKind.ESNext, moduleResolution: ts.ModuleResolutionKind.Bundler },
  },
};

/** Compiles one file of the consumer, without the DOM and without Node's types. */
function compile(name: string, text: string, options: ts.CompilerOptions) {
  const { messages, files } = virtualProgram(new Map([[join(consumer, name), text]]), { strict: true, ...options });
  return { messages: messages().map((message) => message.text), files };
}

describe.each(Object.entries(modes))('types under %s', (_, { file, options }) => {
  it('are found for every entry point', () => {
    expect(compile(file, program, { ...options, skipLibCheck: true }).messages).toEqual([]);
  });

  it('are no any: they see mistakes', () => {
    expect(compile(file, mistakes, { ...options, skipLibCheck: true }).messages).toEqual([
      "Argument of type 'string' is not assignable to parameter of type 'number'.",
      expect.stringContaining(`Argument of type '"roof"' is not assignable to parameter of type 'SchemaName'`),
    ]);
  });

  it('of the core need neither zod nor skipLibCheck', () => {
    const { messages, files } = compile(file, coreOnly, options);
    expect(messages).toEqual([]);
    expect(files.some((name) => name.includes('soffitwright/dist/index.d.'))).toBe(true);
    expect(files.filter((name) => name.includes('zod'))).toEqual([]);
  });
});

describe.each(['index.d.ts', 'index.d.cts', 'drawing.d.ts', 'drawing.d.cts'])('dist/%s', (entry) => {
  it('and what it imports never mention zod', () => {
    const seen = new Map<string, string>();
    const read = (file: string): void => {
      if (seen.has(file)) return;
      const text = readFileSync(file, 'utf8');
      seen.set(file, text);
      for (const { fileName } of ts.preProcessFile(text).importedFiles) {
        if (fileName.startsWith('.')) read(join(dirname(file), fileName.replace(/\.(c?)js$/, '.d.$1ts')));
        else expect(fileName).toBe('soffitwright');
      }
    };
    read(join(dist, entry));
    expect([...seen].filter(([, text]) => /zod/i.test(text)).map(([file]) => file)).toEqual([]);
  });
});
