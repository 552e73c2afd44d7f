import { readFileSync, writeFileSync } from 'node:fs';
import { findingTable, problemTable } from '../test/examples/documentation/codeTables.js';

/** Writes the lists of codes at the end of the README anew. */
const root = process.cwd();
const readme = readFileSync('README.md', 'utf8');
const before = readme.slice(0, readme.indexOf('| finding | sentence |'));
writeFileSync('README.md', `${before}${findingTable()}\n\n${problemTable(root)}\n`);
