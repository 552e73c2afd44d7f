import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { deviations, deviationsPage } from './deviations.js';

const root = fileURLToPath(new URL('../..', import.meta.url));

describe('known deviations', () => {
  it.each(deviations.map((each) => [each.about, each] as const))('%s', (_, { library, ours, published, reason }) => {
    expect(library()).toBe(ours);
    expect(ours).not.toBe(published);
    expect(reason.length).toBeGreaterThan(20);
  });

  it('stand on their page', () => {
    expect(readFileSync(`${root}docs/deviations.md`, 'utf8')).toBe(deviationsPage());
  });
});
