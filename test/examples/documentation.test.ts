import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path/posix';
import { fileURLToPath } from 'node:url';
import * as core from 'soffitwright';
import * as drawing from 'soffitwright/drawing';
import * as schema from 'soffitwright/schema';
import { describe, expect, it } from 'vitest';
import { blocksOfMarkdown, blocksOfSource, type CodeBlock } from './documentation/codeBlocks.js';
import { commandFaults } from './documentation/commandFaults.js';
import { expectedOutput } from './documentation/expectedOutput.js';
import { runExample } from './documentation/runExample.js';
import { typeFaults } from './documentation/typeFaults.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const read = (file: string): string => readFileSync(join(root, file), 'utf8');
const filesUnder = (folder: string, ending: string): string[] =>
  existsSync(join(root, folder))
    ? readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith(ending))
        .map((name) => join(folder, name))
        .sort()
    : [];

const entryPoints = { soffitwright: core, 'soffitwright/drawing': drawing, 'soffitwright/schema': schema };
const scripts = JSON.parse(read('package.json')).scripts as Record<string, string>;

const pages = ['README.md', 'DEVELOPERS.md', ...filesUnder('docs', '.md').filter((file) => !file.startsWith('docs/api/'))];
const blocks = [
  ...pages.flatMap((file) => blocksOfMarkdown(file, read(file))),
  ...filesUnder('src', '.ts').flatMap((file) => blocksOfSource(file, read(file))),
];
const examples = blocks.filter((block) => block.language === 'ts');
const placeOf = ({ file, line }: CodeBlock): string => `${file}:${line}`;

describe('the documentation', () => {
  it.each(examples.map((block) => [placeOf(block), block] as const))('%s prints what it says', async (place, block) => {
    const { printed, expected } = await runExample(block, entryPoints);
    expect(printed, place).toEqual(expected);
  });

  it('passes the compiler', { timeout: 60_000 }, () => {
    expect(typeFaults(examples, root)).toEqual([]);
  });

  it('names commands that exist', () => {
    const shell = blocks.filter((block) => block.language === 'sh');
    expect(shell.length).toBeGreaterThan(0);
    expect(shell.flatMap((block) => commandFaults(block, root, scripts))).toEqual([]);
  });

  it('has no block in a language that nothing checks', () => {
    const checked = ['ts', 'sh', 'text', 'json'];
    expect(blocks.filter((block) => !checked.includes(block.language)).map(placeOf)).toEqual([]);
    for (const block of blocks.filter(({ language }) => language === 'json')) JSON.parse(block.code);
  });

  it('has runnable examples in the README and in the source', () => {
    expect(examples.some((block) => block.file === 'README.md')).toBe(true);
    expect(examples.filter((block) => block.file.startsWith('src/')).length).toBeGreaterThan(5);
  });
});

const fence = '```';
const page = (...lines: string[]): CodeBlock[] => blocksOfMarkdown('page.md', lines.join('\n'));
const run = (...lines: string[]) =>
  runExample({ file: 'page.md', line: 1, language: 'ts', code: lines.join('\n') }, { soffitwright: { two: 2 } });

describe('the check of examples', () => {
  it('finds what an example prints and what it says', async () => {
    const result = await run("import { two } from 'soffitwright';", 'console.log(two, [1], "a");', "// 2 [ 1 ] 'a'");
    expect(result).toEqual({ printed: ['2 [ 1 ] a'], expected: ["2 [ 1 ] 'a'"] });
  });

  it('takes several prints, loops and lines of one print together', async () => {
    const { printed, expected } = await run(
      'for (const n of [1, 2]) {',
      '  console.log(n);',
      '}',
      '// 1',
      '// 2',
      '// not printed',
      '',
      '// a remark',
      'console.log(',
      '  "three\\n\\nfour  ",',
      ');',
      '// three',
      '//',
      '// four',
    );
    expect(expected).toEqual(['1', '2', 'not printed', 'three', '', 'four']);
    expect(printed).toEqual(['1', '2', 'three', '', 'four']);
  });

  it('waits for an example that awaits', async () => {
    expect((await run('console.log(await Promise.resolve(7));', '// 7')).printed).toEqual(['7']);
  });

  it('refuses an example that prints and does not say what', async () => {
    await expect(run('console.log(1);')).rejects.toThrow('page.md:1: this example prints, but no comment line');
    await expect(run('console.log(1); // 1')).rejects.toThrow('page.md:1: this example prints, but no comment line');
    await expect(run('console.log(1);', '', '// 1')).rejects.toThrow('page.md:1: this example prints');
  });

  it('refuses an example that fails, and one that imports what is no entry point', async () => {
    await expect(run("throw new Error('broken');")).rejects.toThrow('page.md:1: broken');
    await expect(run("import { x } from 'elsewhere';", 'x();')).rejects.toThrow('page.md:1: imports elsewhere');
  });

  it('lets an example print nothing and only run', async () => {
    expect(await run('const one = 1;', '// a remark')).toEqual({ printed: [], expected: [] });
    expect(expectedOutput('const one = 1;\n// a remark').prints).toBe(false);
  });

  it('reads the blocks of a page with their lines, and the output in a text block that follows', async () => {
    const [long, none, far] = page(
      'Words.',
      `${fence}ts`,
      'console.log("a");',
      fence,
      '',
      'prints',
      '',
      `${fence}text`,
      'b',
      fence,
      `${fence}ts`,
      'console.log(1);',
      fence,
      '## Another heading',
      `${fence}text`,
      '1',
      fence,
    ).filter((block) => block.language === 'ts');
    expect([long.line, long.output, none.line, none.output, far]).toEqual([2, 'b', 11, undefined, undefined]);
    expect(await runExample(long, {})).toEqual({ printed: ['a'], expected: ['b'] });
  });

  it('refuses a block that is never closed and an @example without a block', () => {
    expect(() => page('', `${fence}ts`, '1')).toThrow('page.md:2: this block is never closed');
    expect(() => blocksOfSource('a.ts', '\n/**\n * Words.\n * @example\n * two()\n */')).toThrow('a.ts:2: an @example');
  });

  it('reads the examples of documentation comments', () => {
    const text = ['', '  /**', '   * Words.', `   * ${fence}ts`, '   * one();', '   *   two();', `   * ${fence}`, '   */'];
    expect(blocksOfSource('a.ts', text.join('\n'))).toEqual([
      { file: 'a.ts', line: 4, language: 'ts', code: 'one();\n  two();' },
    ]);
  });

  it('sees a wrong type with its line', () => {
    const block = { file: 'page.md', line: 10, language: 'ts', code: 'const a = 1;\nconst b: string = a;\nb;' };
    expect(typeFaults([block], root)).toEqual(["page.md:12: Type 'number' is not assignable to type 'string'."]);
  });

  it('sees commands that do not exist', () => {
    const shell = (code: string) => commandFaults({ file: 'page.md', line: 1, language: 'sh', code }, root, { demo: '' });
    expect(shell('npm ci && npm run demo # all\n\nnpx tsc -p tsconfig.json\ngit tag v1\nbash config/vitest.config.ts')).toEqual(
      [],
    );
    expect(shell('npm run paint')).toEqual(['page.md:2: npm run paint: package.json has no script "paint"']);
    expect(shell('npm ci\nnpm test')).toEqual(['page.md:3: npm test: package.json has no script "test"']);
    expect(shell('npx no-such-tool')).toHaveLength(1);
    expect(shell('./gone')).toHaveLength(1);
    expect(shell('curl example.org')).toHaveLength(1);
  });
});
