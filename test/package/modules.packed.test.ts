import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import * as source from 'soffitwright';
import * as sourceOfDrawing from 'soffitwright/drawing';
import * as sourceOfSchema from 'soffitwright/schema';
import { describe, expect, inject, it } from 'vitest';
import { smallRoom } from '../generators/smallRoom.js';

const consumer = inject('consumer');
const installed = join(consumer, 'node_modules/soffitwright');

/** Runs a program of the consumer with nothing but Node; what it prints is JSON. */
function run(name: string, text: string): unknown {
  writeFileSync(join(consumer, name), text);
  return JSON.parse(execFileSync(process.execPath, [join(consumer, name)], { encoding: 'utf8', env: {}, cwd: consumer }));
}

const namesOf = (module: object): string[] => Object.keys(module).sort();
const everyName = [source, sourceOfDrawing, sourceOfSchema].map(namesOf);
const printNames = 'console.log(JSON.stringify([core, drawing, schema].map((each) => Object.keys(each).sort())));';

describe('the packed package', () => {
  it('is imported as ES modules with the names of the source', () => {
    const text = `
      import * as core from 'soffitwright';
      import * as drawing from 'soffitwright/drawing';
      import * as schema from 'soffitwright/schema';
      ${printNames}`;
    expect(run('names.mjs', text)).toEqual(everyName);
  });

  it('is required as CommonJS with the same names', () => {
    const text = `
      const [core, drawing, schema] = ['', '/drawing', '/schema'].map((path) => require('soffitwright' + path));
      ${printNames}`;
    expect(run('names.cjs', text)).toEqual(everyName);
  });

  it('plans the same ceiling from either, to the last digit', () => {
    const plan = `console.log(JSON.stringify(core.planCeiling(${JSON.stringify(smallRoom)})));`;
    const expected = JSON.parse(JSON.stringify(source.planCeiling(smallRoom)));
    expect(run('plan.mjs', `import * as core from 'soffitwright'; ${plan}`)).toEqual(expected);
    expect(run('plan.cjs', `const core = require('soffitwright'); ${plan}`)).toEqual(expected);
  });

  it('recognises the errors of another copy of itself', () => {
    const text = `
      import { createRequire } from 'node:module';
      import { InputError, isInputError } from 'soffitwright';
      const other = createRequire(import.meta.url)('soffitwright');
      try {
        other.rectangle(-1, 2);
      } catch (error) {
        console.log(JSON.stringify([error instanceof InputError, isInputError(error), error.code]));
      }`;
    expect(run('copies.mjs', text)).toEqual([false, true, 'too-small']);
  });

  it('carries the build and the papers, and nothing else', () => {
    expect(readdirSync(installed).sort()).toEqual(['CHANGELOG.md', 'LICENSE', 'README.md', 'dist', 'package.json']);
    const manifest = JSON.parse(readFileSync(join(installed, 'package.json'), 'utf8'));
    expect(manifest.sideEffects).toBe(false);
    expect(Object.keys(manifest.dependencies)).toEqual(['zod']);
    const endings = readdirSync(join(installed, 'dist')).map((name) => name.replace(/^.*?(\.d)?(\.[cm]?[jt]s)$/, '$1$2'));
    expect([...new Set(endings)].sort()).toEqual(['.cjs', '.d.cts', '.d.ts', '.js']);
  });

  it('has an entry point of every kind for each subpath, found by old resolvers too', () => {
    const { exports, typesVersions } = JSON.parse(readFileSync(join(installed, 'package.json'), 'utf8'));
    const subpaths = Object.keys(exports).filter((path) => path !== '.' && path !== './package.json');
    expect(Object.keys(typesVersions['*']).map((path) => `./${path}`)).toEqual(subpaths);
    for (const path of ['.', ...subpaths]) {
      for (const condition of ['import', 'require']) {
        const { types, default: code } = exports[path][condition];
        expect([types, code].map((file: string) => readFileSync(join(installed, file), 'utf8').length > 0)).toEqual([true, true]);
      }
    }
  });
});
