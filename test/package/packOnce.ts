import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** A folder outside the project in which the packed package is installed, with zod beside it. */
    consumer: string;
  }
}

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Packs the package once and installs it, as a user would get it, where nothing of the project can be found by accident. */
export default function packOnce(project: TestProject): () => void {
  refuseStaleBuild();
  const folder = mkdtempSync(join(tmpdir(), 'soffitwright-'));
  const modules = join(folder, 'consumer', 'node_modules');
  const installed = join(modules, 'soffitwright');
  mkdirSync(installed, { recursive: true });
  execFileSync('npm', ['pack', '--ignore-scripts', '--pack-destination', folder], { cwd: root, stdio: 'pipe' });
  const tarball = readdirSync(folder).filter((name) => name.endsWith('.tgz'));
  execFileSync('tar', ['-xzf', join(folder, tarball[0]), '-C', installed, '--strip-components', '1']);
  symlinkSync(join(root, 'node_modules', 'zod'), join(modules, 'zod'), 'junction');
  project.provide('consumer', join(folder, 'consumer'));
  return () => rmSync(folder, { recursive: true, force: true });
}

/** What is tested must be what the source says now. */
function refuseStaleBuild(): void {
  const built = join(root, 'dist', 'soffitwright.global.js');
  const sources = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
  const newest = Math.max(...sources.map((name) => statSync(join(root, 'src', name)).mtimeMs));
  if (!existsSync(built) || statSync(built).mtimeMs < newest) {
    throw new Error('dist/ is missing or older than src/: run `npm run build` first (`npm test` does)');
  }
}
