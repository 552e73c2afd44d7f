import { dirname, resolve } from 'node:path';
import ts from 'typescript';
import { virtualProgram } from '../../package/virtualProgram.js';
import type { CodeBlock } from './codeBlocks.js';

/** What the compiler says against examples, as a reader would meet it: place and message. */
export function typeFaults(blocks: readonly CodeBlock[], root: string): string[] {
  const config = resolve(root, 'config/tsconfig.test.json');
  const { options } = ts.parseJsonConfigFileContent(ts.readConfigFile(config, ts.sys.readFile).config, ts.sys, dirname(config));
  const byName = new Map(blocks.map((block, index) => [resolve(root, `example${index}.ts`), block]));
  const texts = new Map([...byName].map(([name, block]) => [name, block.code]));
  const settings = { ...options, noUnusedLocals: false, moduleDetection: ts.ModuleDetectionKind.Force };
  return virtualProgram(texts, settings)
    .messages()
    .flatMap(({ file, line, text }) => {
      const block = byName.get(file);
      return block === undefined ? [] : [`${block.file}:${block.line + 1 + line}: ${text}`];
    });
}
