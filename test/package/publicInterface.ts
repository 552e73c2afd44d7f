import { join } from 'node:path';
import ts from 'typescript';

/** A name that users can import. */
export interface PublicName {
  readonly name: string;
  /** Kind and shape in one line: a function with its types, an interface or class with its fields, a type with what it is. */
  readonly shape: string;
  readonly hasExample: boolean;
}

const FULLY =
  ts.TypeFormatFlags.NoTruncation | ts.TypeFormatFlags.InTypeAlias | ts.TypeFormatFlags.UseSingleQuotesForStringLiteralType;

/** What an entry point exports, in alphabetical order. */
export function publicInterface(root: string, entries: readonly string[]): PublicName[][] {
  const { config } = ts.readConfigFile(join(root, 'tsconfig.json'), ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, root);
  const files = entries.map((entry) => join(root, entry));
  const program = ts.createProgram(files, options);
  const checker = program.getTypeChecker();
  return files.map((file) => {
    const source = program.getSourceFile(file);
    const module = source && checker.getSymbolAtLocation(source);
    if (module === undefined) throw new Error(`${file} exports nothing`);
    return checker
      .getExportsOfModule(module)
      .map((symbol) => nameOf(symbol, checker))
      .sort((a, b) => (a.name < b.name ? -1 : 1));
  });
}

function nameOf(exported: ts.Symbol, checker: ts.TypeChecker): PublicName {
  const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
  const tags = symbol.getJsDocTags(checker);
  const shape = shapeOf(symbol, checker);
  return { name: exported.name, shape, hasExample: tags.some((tag) => tag.name === 'example') };
}

function shapeOf(symbol: ts.Symbol, checker: ts.TypeChecker): string {
  const declaration = symbol.declarations?.[0];
  if (symbol.flags & (ts.SymbolFlags.Interface | ts.SymbolFlags.Class)) {
    const fields = checker.getDeclaredTypeOfSymbol(symbol).getProperties().filter(isOwn);
    const kind = symbol.flags & ts.SymbolFlags.Class ? 'class' : 'interface';
    return `${kind} { ${fields.map((field) => field.name + (field.flags & ts.SymbolFlags.Optional ? '?' : '')).join(', ')} }`;
  }
  if (declaration && ts.isTypeAliasDeclaration(declaration)) {
    const written = oneLine(declaration.type).replace(/^\| /, '');
    // What is derived from a value is shown as what it comes to, or a change of the value would not show.
    const type = checker.getDeclaredTypeOfSymbol(symbol);
    return `type ${written.includes('typeof') ? checker.typeToString(type, undefined, FULLY) : written}`;
  }
  const written = declaration && functionOf(declaration);
  if (written) {
    return `function (${written.parameters.map(oneLine).join(', ')}): ${written.type ? oneLine(written.type) : 'any'}`;
  }
  return `const ${checker.typeToString(checker.getTypeOfSymbol(symbol), undefined, FULLY)}`;
}

/** The function that a declaration declares: its types as they are written, so that the list shows their names. */
function functionOf(declaration: ts.Declaration): ts.FunctionDeclaration | ts.ArrowFunction | undefined {
  if (ts.isFunctionDeclaration(declaration)) return declaration;
  const value = ts.isVariableDeclaration(declaration) ? declaration.initializer : undefined;
  return value && ts.isArrowFunction(value) ? value : undefined;
}

const oneLine = (node: ts.Node): string =>
  node
    .getText()
    .replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')
    .replace(/\s+/g, ' ')
    .trim();

/** Not what a class has from the language's own `Error`. */
const isOwn = (symbol: ts.Symbol): boolean =>
  (symbol.declarations ?? []).some((declaration) => !declaration.getSourceFile().fileName.includes('/typescript/lib/'));
