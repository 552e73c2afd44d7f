import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

/** The entry points as a user imports them; whole names only, or a subpath would be looked for under `src/index.ts/`. */
const entries: Record<string, string> = {
  soffitwright: 'src/index.ts',
  'soffitwright/drawing': 'src/drawing/index.ts',
  'soffitwright/schema': 'src/schema.ts',
};

export default defineConfig({
  root,
  resolve: {
    alias: Object.entries(entries).map(([name, file]) => ({ find: new RegExp(`^${name}$`), replacement: root + file })),
  },
  test: {
    // Both cores of a small machine.
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: { name: 'source', include: ['test/**/*.test.ts'], exclude: ['test/**/*.packed.test.ts'], testTimeout: 30_000 },
      },
      {
        // Of the tarball, in programs of its users.
        extends: true,
        test: {
          name: 'packed',
          include: ['test/package/*.packed.test.ts'],
          globalSetup: 'test/package/packOnce.ts',
          testTimeout: 60_000,
        },
      },
    ],
  },
});
