import { mkdirSync, writeFileSync } from 'node:fs';
import { coveragePage } from '../test/published/coverage.js';
import { deviationsPage } from '../test/published/deviations.js';

/** Writes the pages of clauses and of known deviations anew. */
mkdirSync('docs', { recursive: true });
writeFileSync('docs/coverage.md', coveragePage());
writeFileSync('docs/deviations.md', deviationsPage());
