import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import type { CodeBlock } from './codeBlocks.js';

/** Commands that npm knows by itself. */
const NPM_OWN = ['ci', 'install', 'pack', 'publish', 'version'];

/** Commands in a ```sh block that would not work in a checkout: npm scripts and files that do not exist, tools nobody installed. */
export function commandFaults(
  { file, line, code }: CodeBlock,
  root: string,
  scripts: Readonly<Record<string, string>>,
): string[] {
  const commands = code
    .split('\n')
    .map((text) => text.replace(/(^|\s)#.*$/, ''))
    .flatMap((text, index) => text.split(/&&|;|\|/).map((command) => ({ command: command.trim(), at: line + 1 + index })))
    .filter(({ command }) => command !== '');
  return commands.flatMap(({ command, at }) => {
    const fault = faultOf(command.split(/\s+/), root, scripts);
    return fault === undefined ? [] : [`${file}:${at}: ${command}: ${fault}`];
  });
}

function faultOf([tool, first = '', second = '']: string[], root: string, scripts: Readonly<Record<string, string>>) {
  if (tool === 'npm') {
    const script = first === 'run' ? second : first;
    if (first !== 'run' && NPM_OWN.includes(first)) return;
    return Object.hasOwn(scripts, script) ? undefined : `package.json has no script "${script}"`;
  }
  if (tool === 'npx') {
    return existsSync(resolve(root, 'node_modules/.bin', first)) ? undefined : `${first} is not among the development tools`;
  }
  if (tool === 'git') return;
  const path = tool === 'bash' ? first : tool;
  return path.includes('/') && existsSync(resolve(root, path)) ? undefined : 'neither npm, npx, git nor a file of this project';
}
