import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { importFaults, readSources } from './importOrder.js';

const faultsOf = (files: Record<string, string>): string[] => importFaults(new Map(Object.entries(files)));

describe('the imports of src/', () => {
  it('follow the order of the job and run in no ring', () => {
    const sources = readSources(fileURLToPath(new URL('../../src', import.meta.url)));
    expect(sources.size).toBeGreaterThan(30);
    expect(importFaults(sources)).toEqual([]);
  });
});

describe('the import check', () => {
  it('lets a step use itself, earlier steps and zod/mini', () => {
    expect(
      faultsOf({
        'index.ts': "export { plan } from './plan/plan.js';",
        'plan/plan.ts': "import type { Room } from '../survey/room.js'; import { row } from './row.js';",
        'plan/row.ts': '',
        'survey/room.ts': "import * as z from 'zod/mini';",
      }),
    ).toEqual([]);
  });

  it.each([
    ['an import', "import { plan } from '../plan/plan.js';"],
    ['a type import', "import type { Plan } from '../plan/plan.js';"],
    ['a re-export', "export { plan } from '../plan/plan.js';"],
    ['an import type', "export type Plan = import('../plan/plan.js').Plan;"],
    ['a dynamic import', "export const later = () => import('../plan/plan.js');"],
  ])('sees %s from a later step', (_, text) => {
    expect(faultsOf({ 'survey/room.ts': text, 'plan/plan.ts': '' })).toEqual([
      'survey/room.ts imports ../plan/plan.js: plan/ comes after survey/',
    ]);
  });

  it.each(['boards', 'fixings'])('keeps the verifier apart from %s/', (folder) => {
    const file = `${folder}/a.ts`;
    expect(faultsOf({ 'checks/check.ts': `import type { A } from '../${folder}/a.js';`, [file]: '' })).toEqual([
      `checks/check.ts imports ../${folder}/a.js: checks/ must know nothing of ${folder}/`,
    ]);
  });

  it('keeps drawing out of the core', () => {
    expect(faultsOf({ 'index.ts': "export { draw } from './drawing/draw.js';", 'drawing/draw.ts': '' })).toEqual([
      'index.ts imports ./drawing/draw.js: drawing/ comes after plan/',
    ]);
  });

  it('refuses entry points, unknown folders, other packages, missing files and missing endings', () => {
    expect(
      faultsOf({
        'index.ts': '',
        'survey/a.ts': "import '../index.js'; import '../tools/t.js'; import 'zod'; import './gone.js'; import './b';",
        'survey/b.ts': '',
        'tools/t.ts': '',
      }),
    ).toEqual([
      'survey/a.ts imports ../index.js: an entry point is for users, not for the steps',
      'survey/a.ts imports ../tools/t.js: a folder that is not one of the steps of the job',
      'survey/a.ts imports zod: the only packages for src/ are zod/mini',
      'survey/a.ts imports ./gone.js: there is no such file',
      'survey/a.ts imports ./b: relative imports end in .js',
    ]);
  });

  it('names the files of a ring, also one of types only', () => {
    expect(
      faultsOf({
        'survey/a.ts': "import './b.js';",
        'survey/b.ts': "import './c.js';",
        'survey/c.ts': "import type { B } from './b.js';",
      }),
    ).toEqual(['these import each other in a ring: survey/b.ts > survey/c.ts > survey/b.ts']);
  });
});
