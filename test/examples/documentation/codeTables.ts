import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path/posix';
import { messages } from '../../../src/rules/messages.js';

/** The table of finding codes as it stands in the README, made from the message table. */
export function findingTable(): string {
  const rows = Object.entries(messages)
    .filter(([, { of }]) => of === undefined)
    .map(([code, { message }]) => `| \`${code}\` | ${message.replace(/\{\w+\}/g, '…')} |`);
  return ['| finding | sentence |', '| --- | --- |', ...rows].join('\n');
}

/** The table of problem codes, from the places that raise them. */
export function problemTable(root: string): string {
  const sources = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => readFileSync(join(root, 'src', file), 'utf8'));
  const raised = sources.flatMap((text) => [
    ...[...text.matchAll(/\bproblem\(\s*'([a-z]+(?:-[a-z]+)*)'/g)].map((match) => match[1]),
    ...[...text.matchAll(/\bfault\(\s*'([a-z]+(?:-[a-z]+)*)'/g)].map((match) => match[1]),
    ...[...text.matchAll(/\bdemand\((?:[^;]|\n)*?\s'([a-z]+(?:-[a-z]+)+)',/g)].map((match) => match[1]),
  ]);
  return [
    'Problems with an input:',
    [...new Set(raised)]
      .sort()
      .map((code) => `\`${code}\``)
      .join(', '),
  ].join(' ');
}
