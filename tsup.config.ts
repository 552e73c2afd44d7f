import { readFileSync } from 'node:fs';
import { defineConfig, type Options } from 'tsup';

const common: Options = { target: 'es2022', platform: 'neutral', sourcemap: false, clean: false };

/** The licences of what one file carries; both ask to be kept with every copy. */
const licences = ['LICENSE', 'node_modules/zod/LICENSE'].map((file) => readFileSync(file, 'utf8').trim()).join('\n\nzod:\n\n');

export default defineConfig([
  {
    ...common,
    entry: { index: 'src/index.ts', drawing: 'src/drawing/index.ts', schema: 'src/schema.ts' },
    format: ['esm', 'cjs'],
    // One copy of the core, however many entry points a program uses.
    splitting: true,
    // The declaration step asks for options that TypeScript 6 calls deprecated.
    dts: { compilerOptions: { ignoreDeprecations: '6.0' } },
  },
  {
    ...common,
    entry: { soffitwright: 'src/global.ts' },
    format: ['iife'],
    globalName: 'Soffitwright',
    // Hosts that cannot load modules cannot fetch zod either, and may read older syntax only.
    noExternal: ['zod'],
    target: 'es2019',
    minify: true,
    banner: { js: `/*!\n${licences}\n*/` },
  },
]);
