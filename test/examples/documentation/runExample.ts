import { Console } from 'node:console';
import { createRequire } from 'node:module';
import { Writable } from 'node:stream';
import { runInThisContext } from 'node:vm';
import ts from 'typescript';
import type { CodeBlock } from './codeBlocks.js';
import { expectedOutput } from './expectedOutput.js';

/** What an example prints and what it says it prints, line by line. */
export interface ExampleRun {
  readonly printed: readonly string[];
  readonly expected: readonly string[];
}

/**
 * Runs an example with the entry points it may import.
 *
 * @throws Error that names the place when the example fails, or prints and does not say what
 */
export async function runExample(block: CodeBlock, entryPoints: Readonly<Record<string, unknown>>): Promise<ExampleRun> {
  const place = `${block.file}:${block.line}`;
  const { prints, lines } = expectedOutput(block.code);
  const expected = lines.length > 0 || block.output === undefined ? lines : linesOf(block.output);
  if (prints && expected.length === 0) {
    throw new Error(`${place}: this example prints, but no comment line after console.log says what`);
  }
  const written: string[] = [];
  const stream = new Writable({
    write(chunk, _, done) {
      written.push(String(chunk));
      done();
    },
  });
  try {
    await programOf(block)(importer(entryPoints), {}, new Console(stream));
  } catch (error) {
    throw new Error(`${place}: ${error instanceof Error ? error.message : String(error)}`, { cause: error });
  }
  return { printed: linesOf(written.join('')), expected };
}

type Program = (require: (name: string) => unknown, exports: object, console: Console) => Promise<void>;

function programOf({ file, line, code }: CodeBlock): Program {
  const { outputText } = ts.transpileModule(code, {
    fileName: file,
    compilerOptions: { module: ts.ModuleKind.CommonJS, target: ts.ScriptTarget.ES2022, esModuleInterop: true },
  });
  return runInThisContext(`(async (require, exports, console) => {${outputText}\n})`, { filename: file, lineOffset: line });
}

function importer(entryPoints: Readonly<Record<string, unknown>>): (name: string) => unknown {
  const fromHere = createRequire(import.meta.url);
  return (name) => {
    if (Object.hasOwn(entryPoints, name)) return entryPoints[name];
    if (name.startsWith('node:')) return fromHere(name);
    throw new Error(`imports ${name}, which is no entry point`);
  };
}

function linesOf(text: string): string[] {
  const lines = text.split('\n').map((line) => line.trimEnd());
  while (lines.at(-1) === '') lines.pop();
  return lines;
}
