import ts from 'typescript';

/** A message of the compiler about a file that exists in memory only. */
export interface CompilerMessage {
  readonly file: string;
  /** From 0. */
  readonly line: number;
  readonly text: string;
}

/** Compiles texts as if they stood in files, with whatever they import from the disk. */
export function virtualProgram(texts: ReadonlyMap<string, string>, options: ts.CompilerOptions) {
  const settings: ts.CompilerOptions = {
    target: ts.ScriptTarget.ES2022,
    lib: ['lib.es2022.d.ts'],
    types: [],
    ...options,
    noEmit: true,
  };
  const host = ts.createCompilerHost(settings);
  const { getSourceFile, fileExists, readFile } = host;
  host.fileExists = (name) => texts.has(name) || fileExists(name);
  host.readFile = (name) => texts.get(name) ?? readFile(name);
  host.getSourceFile = (name, target, ...rest) => {
    const text = texts.get(name);
    return text === undefined ? getSourceFile(name, target, ...rest) : ts.createSourceFile(name, text, target);
  };
  const program = ts.createProgram([...texts.keys()], settings, host);
  return {
    files: program.getSourceFiles().map((source) => source.fileName),
    messages: (): CompilerMessage[] =>
      ts.getPreEmitDiagnostics(program).map(({ file, start = 0, messageText }) => ({
        file: file?.fileName ?? '',
        line: file?.getLineAndCharacterOfPosition(start).line ?? 0,
        text: ts.flattenDiagnosticMessageText(messageText, '\n'),
      })),
  };
}
