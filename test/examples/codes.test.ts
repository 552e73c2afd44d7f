import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { findingTable, problemTable } from './documentation/codeTables.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const readme = readFileSync(`${root}README.md`, 'utf8');

/** Codes that other programs rely on; they are never renamed or dropped. */
const FIXED = [
  'cover-gap',
  'overlap',
  'outside-room',
  'over-opening',
  'end-off-timber',
  'bearing-short',
  'end-unproven',
  'stagger',
  'piece-below-minimum',
  'piece-on-one-support',
  'row-below-minimum',
  'board-overcut',
  'board-unknown',
  'stock-exceeded',
  'board-parallel-to-supports',
  'support-centres-exceeded',
  'perimeter-overhang',
  'joist-width-assumed',
  'embedment-short',
  'embedment-below-preferred',
  'embedment-deep',
  'fixing-gap',
  'fixing-edge',
  'fixing-off-timber',
  'texture-untested',
  'looks-like-metres',
];

it('the README lists every code that a finding or a problem can have', () => {
  expect(readme).toContain(findingTable());
  expect(readme).toContain(problemTable(root));
});

it('the codes that are fixed are all there', () => {
  expect(FIXED.filter((code) => !readme.includes(`\`${code}\``))).toEqual([]);
});
