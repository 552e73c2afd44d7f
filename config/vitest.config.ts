import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

export default defineConfig({
  root,
  resolve: { alias: { soffitwright: `${root}src/index.ts` } },
  test: { include: ['test/**/*.test.ts'] },
});
