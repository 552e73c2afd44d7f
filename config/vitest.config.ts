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
    projects: [
      {
        extends: true,
        test: { name: 'library', include: ['test/**/*.test.ts'], exclude: ['test/package/**'] },
      },
      {
        extends: true,
        test: { name: 'package', include: ['test/package/**/*.test.ts'], testTimeout: 60_000, hookTimeout: 120_000 },
      },
    ],
  },
});
