/** A fenced block of a document. */
export interface CodeBlock {
  readonly file: string;
  /** Line of the opening fence, from 1. */
  readonly line: number;
  readonly language: string;
  readonly code: string;
  /** The ```text block that stands right after it, or after one paragraph: what a long output looks like. */
  readonly output?: string;
}

const FENCE = /^(\s*)```(.*)$/;

/** Every fenced block of a Markdown text. */
export function blocksOfMarkdown(file: string, text: string, firstLine = 1): CodeBlock[] {
  const lines = text.split(/\r?\n/);
  const blocks: (CodeBlock & { readonly end: number })[] = [];
  for (let i = 0; i < lines.length; i++) {
    const opening = FENCE.exec(lines[i]);
    if (opening === null) continue;
    const start = i;
    const indent = new RegExp(`^\\s{0,${opening[1].length}}`);
    const code: string[] = [];
    for (i++; i < lines.length && !/^\s*```\s*$/.test(lines[i]); i++) code.push(lines[i].replace(indent, ''));
    if (i === lines.length) throw new Error(`${file}:${firstLine + start}: this block is never closed`);
    blocks.push({ file, line: firstLine + start, language: opening[2].trim(), code: code.join('\n'), end: i });
  }
  return blocks.map(({ end, ...block }, index) => {
    const next = blocks[index + 1];
    const between = next === undefined ? [] : lines.slice(end + 1, next.line - firstLine);
    return block.language === 'ts' && next?.language === 'text' && isOneParagraph(between)
      ? { ...block, output: next.code }
      : block;
  });
}

/** Every fenced block in the documentation comments of a source text; an `@example` without one is a mistake. */
export function blocksOfSource(file: string, text: string): CodeBlock[] {
  return [...text.matchAll(/\/\*\*[\s\S]*?\*\//g)].flatMap((comment) => {
    const firstLine = text.slice(0, comment.index).split('\n').length;
    const lines = comment[0].slice(3, -2).split('\n');
    const body = lines.map((line) => line.replace(/^\s*\* ?/, '')).join('\n');
    const blocks = blocksOfMarkdown(file, body, firstLine);
    const examples = body.split('\n').filter((line) => line.startsWith('@example')).length;
    const runnable = blocks.filter((block) => block.language === 'ts').length;
    if (examples > runnable) throw new Error(`${file}:${firstLine}: an @example here has no \`\`\`ts block`);
    return blocks;
  });
}

const isOneParagraph = (lines: readonly string[]): boolean => !/\n\s*\n|^#/m.test(lines.join('\n').trim());
