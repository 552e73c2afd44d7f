import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { describe, expect, inject, it } from 'vitest';
import { virtualProgram } from './virtualProgram.js';

const consumer = inject('consumer');
const dist = join(consumer, 'node_modules/soffitwright/dist');

/** What a bundler makes of a program that uses the package, minified, zod included. */
async function bundle(text: string): Promise<string> {
  const { outputFiles } = await build({
    stdin: { contents: text, resolveDir: consumer },
    bundle: true,
    minify: true,
    format: 'esm',
    target: 'es2022',
    write: false,
  });
  return outputFiles[0].text;
}

/** Names that a program uses and the language itself does not have. */
function foreignNames(text: string): string[] {
  const messages = virtualProgram(new Map([['/bundle.ts', text]]), {})
    .messages()
    .map((message) => /Cannot find name '(.+?)'/.exec(message.text)?.[1]);
  return [...new Set(messages.filter((name) => name !== undefined))].sort();
}

/** Marks of what must not be in a bundle of the core. */
const denied: Record<string, RegExp> = {
  'a module loader': /\brequire\s*\(|\bimport\s*\(/,
  "classic zod's sentences": /Invalid input: expected|Invalid option/,
  "zod's languages": /Ungültig|invalide|inválid/i,
  'JSON Schema': /json-schema\.org/,
  'the drawing': /<svg|<\/svg>/,
  'the clock': /\bDate\.now|performance\.now/,
  chance: /Math\.random/,
  'the locale': /localeCompare|toLocale(?!$)|\bIntl\b/,
};

const kilobytes = (text: string): number => Math.ceil(gzipSync(text, { level: 9 }).length / 100) / 10;

// Ceilings in kB after minifying and gzip, zod included: what was measured, and about a tenth more.
const programs: [string, string, number][] = [
  ['one small function', "import { rectangle } from 'soffitwright'; console.log(rectangle(1, 1));", 26.5],
  ['the whole core', "import * as core from 'soffitwright'; console.log(core);", 180],
];

describe('a bundle', () => {
  it.each(programs)('of %s stays small', async (_, text, ceiling) => {
    expect(kilobytes(await bundle(text))).toBeLessThan(ceiling);
  });

  it('of the core carries nothing that it must not', async () => {
    const text = await bundle("export * from 'soffitwright';");
    expect(Object.keys(denied).filter((name) => denied[name].test(text))).toEqual([]);
    expect(foreignNames(text)).toEqual([]);
  });

  it('for script hosts stays small and names nothing outside the language', () => {
    const text = readFileSync(join(dist, 'soffitwright.global.js'), 'utf8');
    expect(kilobytes(text)).toBeLessThan(218);
    expect(foreignNames(text)).toEqual([]);
  });

  it('of the core holds no file of drawing', async () => {
    const root = fileURLToPath(new URL('../..', import.meta.url));
    const { metafile } = await build({
      entryPoints: [join(root, 'src/index.ts')],
      bundle: true,
      write: false,
      metafile: true,
      packages: 'external',
      absWorkingDir: root,
      treeShaking: false,
    });
    const files = Object.keys(metafile.inputs);
    expect(files).toContain('src/survey/rectangle.ts');
    expect(files.filter((name) => /^src\/(schedule|drawing|spreadsheet)\//.test(name))).toEqual([]);
  });
});

describe('the check of bundles', () => {
  it('sees names that a host may not have, and lets those of the language be', () => {
    const text =
      'const a = Math.max(1, globalThis.Map.length); typeof window; process.exit(a); require("x"); console.log(document);';
    expect(foreignNames(text)).toEqual(['console', 'document', 'process', 'require', 'window']);
  });

  it.each([
    ['a module loader', 'require("x")'],
    ["classic zod's sentences", '"Invalid input: expected " + a'],
    ['the drawing', '"<svg>"'],
    ['chance', 'Math.random()'],
    ['the locale', 'a.localeCompare(b)'],
  ])('sees %s', (name, text) => {
    expect(denied[name].test(text)).toBe(true);
  });
});
