import ts from 'typescript';

/** Whether a program prints, and what the comment lines after its `console.log`s say that it prints. */
export interface ExpectedOutput {
  readonly prints: boolean;
  /** Without the comment marks, in order; empty when no comment says anything. */
  readonly lines: readonly string[];
}

/**
 * The output that a program promises: the `//` lines right after each statement that holds a `console.log`, up to the first line
 * that is not a comment. A loop or a block may carry them after its end.
 */
export function expectedOutput(code: string): ExpectedOutput {
  const source = ts.createSourceFile('example.ts', code, ts.ScriptTarget.ES2022, true);
  const lines = code.split('\n');
  const taken = new Map<number, string>();
  let prints = false;
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && node.expression.getText(source) === 'console.log') {
      prints = true;
      for (let holder: ts.Node = node; holder !== source; holder = holder.parent) takeAfter(holder.end);
    }
    ts.forEachChild(node, visit);
  };
  const takeAfter = (end: number): void => {
    for (let i = source.getLineAndCharacterOfPosition(end).line + 1; i < lines.length; i++) {
      const comment = /^\s*\/\/ ?(.*)$/.exec(lines[i]);
      if (comment === null) return;
      taken.set(i, comment[1].trimEnd());
    }
  };
  visit(source);
  return { prints, lines: [...taken].sort(([a], [b]) => a - b).map(([, line]) => line) };
}
