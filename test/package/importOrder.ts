import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path/posix';
import ts from 'typescript';

/** Source text by path, `survey/room.ts` for `src/survey/room.ts`. */
export type Sources = ReadonlyMap<string, string>;

/** The steps of the job; a folder may import from itself and from folders before it. */
const STEPS = [
  'survey',
  'rules',
  'joists',
  'loads',
  'decision',
  'boards',
  'checks',
  'fixings',
  'takeoff',
  'plan',
  'schedule',
  'drawing',
  'spreadsheet',
];

/** What an independent verifier may not know, though it comes before it. */
const HIDDEN: Readonly<Record<string, readonly string[]>> = { checks: ['boards', 'fixings'] };

/** Last step that an entry point outside the folders may reach; `global.ts` gathers all of them. */
const ENTRY_POINTS: Readonly<Record<string, string>> = { 'index.ts': 'plan', 'schema.ts': 'plan', 'global.ts': 'spreadsheet' };

/** The only packages that may be imported. */
const PACKAGES = ['zod/mini'];

/** Every source file under a folder. */
export function readSources(folder: string): Sources {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
  return new Map(names.sort().map((name) => [normalize(name.replaceAll('\\', '/')), readFileSync(join(folder, name), 'utf8')]));
}

/** Every import that breaks the order of the steps, and every ring of files that import each other; a sentence for each. */
export function importFaults(sources: Sources): string[] {
  const faults: string[] = [];
  const graph = new Map<string, string[]>();
  for (const [file, text] of sources) {
    const targets: string[] = [];
    for (const name of importsOf(file, text)) {
      const target = name.startsWith('.') ? normalize(join(dirname(file), name)).replace(/\.js$/, '.ts') : undefined;
      const fault = target === undefined ? packageFault(name) : fileFault(file, name, target, sources);
      if (fault !== undefined) faults.push(`${file} imports ${name}: ${fault}`);
      else if (target !== undefined) targets.push(target);
    }
    graph.set(file, targets);
  }
  return [...faults, ...rings(graph).map((ring) => `these import each other in a ring: ${ring.join(' > ')}`)];
}

/** Names of all modules that a file mentions, types and dynamic imports included. */
function importsOf(file: string, text: string): string[] {
  const names: string[] = [];
  const visit = (node: ts.Node): void => {
    const named =
      ts.isImportDeclaration(node) || ts.isExportDeclaration(node)
        ? node.moduleSpecifier
        : ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)
          ? node.argument.literal
          : ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword
            ? node.arguments[0]
            : undefined;
    if (named !== undefined && ts.isStringLiteral(named)) names.push(named.text);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file, text, ts.ScriptTarget.ES2022));
  return names;
}

const packageFault = (name: string): string | undefined =>
  PACKAGES.includes(name) ? undefined : `the only packages for src/ are ${PACKAGES.join(', ')}`;

function fileFault(file: string, name: string, target: string, sources: Sources): string | undefined {
  if (!name.endsWith('.js')) return 'relative imports end in .js';
  if (!sources.has(target)) return 'there is no such file';
  const from = stepOf(file);
  const to = stepOf(target);
  if (from === undefined || to === undefined) return 'a folder that is not one of the steps of the job';
  if (to === 'entry') return file === 'global.ts' ? undefined : 'an entry point is for users, not for the steps';
  if (HIDDEN[from]?.includes(to)) return `${from}/ must know nothing of ${to}/`;
  const limit = from === 'entry' ? (ENTRY_POINTS[file] ?? '') : from;
  return STEPS.indexOf(to) > STEPS.indexOf(limit) ? `${to}/ comes after ${limit}/` : undefined;
}

function stepOf(file: string): string | undefined {
  const folder = file.includes('/') ? file.slice(0, file.indexOf('/')) : undefined;
  if (folder === undefined) return Object.hasOwn(ENTRY_POINTS, file) ? 'entry' : undefined;
  return STEPS.includes(folder) ? folder : undefined;
}

/** One ring for each import that closes one, in the order in which a walk through the files meets them. */
function rings(graph: ReadonlyMap<string, readonly string[]>): string[][] {
  const found: string[][] = [];
  const done = new Set<string>();
  const walk = (file: string, path: readonly string[]): void => {
    const at = path.indexOf(file);
    if (at >= 0) found.push([...path.slice(at), file]);
    if (at >= 0 || done.has(file)) return;
    for (const target of graph.get(file) ?? []) walk(target, [...path, file]);
    done.add(file);
  };
  for (const file of graph.keys()) walk(file, []);
  return found;
}
