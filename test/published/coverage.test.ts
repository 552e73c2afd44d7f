import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { checks, coveragePage, loosePublishedValues, uncheckedValues } from './coverage.js';
import { codeClauses, standards } from './standards.js';

const root = fileURLToPath(new URL('../..', import.meta.url));

describe('the page of clauses', () => {
  it('is what the code gives', () => {
    expect(readFileSync(`${root}docs/coverage.md`, 'utf8')).toBe(coveragePage());
  });

  it('knows every module of standards', () => {
    const modules = readdirSync(`${root}src/rules/standards`).map((file) => file.replace(/\.ts$/, ''));
    expect([...Object.keys(standards)].sort()).toEqual(modules.sort());
  });

  it('has each clause once', () => {
    const own = codeClauses.map(({ module, id }) => `${module} ${id}`);
    const ids = new Set(codeClauses.map(({ id }) => id));
    expect(own.length).toBeGreaterThan(60);
    expect(new Set(own).size).toBe(ids.size);
  });
});

describe('what is given as published', () => {
  it('has a published check for each clause, and for each row that a rule set uses', () => {
    expect(uncheckedValues(codeClauses, checks)).toEqual([]);
  });

  it('is found out when one check is taken away', () => {
    const alone = checks.filter(({ reaches, row }) => reaches !== undefined && row.clause === 'nbc-9.29.5.5');
    const without = checks.filter((each) => each !== alone[0] && each.reaches !== alone[0].reaches);
    expect(uncheckedValues(codeClauses, without)).toEqual([expect.stringContaining('nbc-9.29.5.5: no published check of 20')]);
    const nds = checks.filter(({ row }) => row.clause !== 'nds-2018-12.2.2');
    expect(uncheckedValues(codeClauses, nds)).toEqual(['nds-2018-12.2.2: no published check']);
  });

  it('belongs to a clause', () => {
    expect(loosePublishedValues()).toEqual([]);
  });
});

describe('published checks', () => {
  it('name a clause that exists', () => {
    const ids = new Set(codeClauses.map(({ id }) => id));
    expect(checks.map(({ row }) => row.clause).filter((id) => !ids.has(id))).toEqual([]);
  });

  it('of a rule set lead to a row of the clause that they name', () => {
    const stray = checks.filter(
      ({ row, reaches }) =>
        reaches !== undefined && !codeClauses.some(({ id, ruleRows }) => id === row.clause && ruleRows.includes(reaches)),
    );
    expect(stray.map(({ row }) => row.clause)).toEqual([]);
  });

  it('say for each value where it stands, and that it was read there or in a quotation', () => {
    for (const { row } of checks) {
      expect(['read', 'secondary'], row.clause).toContain(row.source.standing);
      expect(row.source.standard.length, row.clause).toBeGreaterThan(0);
    }
  });
});
