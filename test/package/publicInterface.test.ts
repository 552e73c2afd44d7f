import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { publicInterface } from './publicInterface.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const entries = { soffitwright: 'src/index.ts', drawing: 'src/drawing/index.ts', schema: 'src/schema.ts' };
const names = publicInterface(root, Object.values(entries));

describe.each(Object.keys(entries).map((entry, index) => [entry, names[index]] as const))(
  'the entry point %s',
  (entry, exported) => {
    // Names, fields and types are promises: a change here is a change for users, and stands in CHANGELOG.md. After a change that is
    // meant, `npx vitest run --config config/vitest.config.ts test/package/publicInterface.test.ts -u` writes the list anew.
    it('exports what its list says', async () => {
      const list = exported.map(({ name, shape }) => `${name}: ${shape}\n`).join('');
      await expect(list).toMatchFileSnapshot(`interface/${entry}.txt`);
    });

    it('has no untyped function', () => {
      expect(exported.filter(({ shape }) => /\bany\b/.test(shape))).toEqual([]);
    });

    it('shows every function at work in an example', () => {
      const functions = exported.filter(({ shape }) => shape.startsWith('function '));
      expect(functions.length).toBeGreaterThan(0);
      expect(functions.filter(({ hasExample }) => !hasExample).map(({ name }) => name)).toEqual([]);
    });
  },
);
