import { type CeilingPlan, type Job, type Mark, planCeiling, rectangle } from 'soffitwright';
import { cutList, drawCutting, drawPlan, settingOut } from 'soffitwright/drawing';
import { describe, expect, it } from 'vitest';

const room = { outline: rectangle(4200, 3600) };
const boards = [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' as const }];
const marks = [130, 531, 1329, 1730, 2931, 3728].map((x): Mark => ({ x, y: 1500, kind: 'probe' }));
const planned = (joists: Job['joists']): CeilingPlan => planCeiling({ room, joists, lining: [], boards });

const fromMarks = planned({ marks, direction: 'y', width: 50 });
const given = planned({ direction: 'y', first: 130, spacing: 400, width: 50 });
const codes = (plan: CeilingPlan): string[] => plan.findings.map(({ code }) => code);

describe('a plan on joists from marks', () => {
  it('says how many more probes make every butt joint sure, and where', () => {
    const finding = fromMarks.findings.find(({ code }) => code === 'probes-make-safe');
    expect(finding?.value).toBe(fromMarks.probes.length);
    expect(fromMarks.probes.length).toBeGreaterThan(0);
    for (const { joist, x, y, find } of fromMarks.probes) {
      expect(finding?.message).toContain(`${joist} (${x}, ${y})`);
      expect(find).toBe('edges');
      expect(fromMarks.certainty.map((each) => each.joist)).toContain(joist);
    }
  });

  it('gives the first of them as the next probe', () => {
    expect(fromMarks.nextProbe).toEqual(fromMarks.probes[0]);
  });

  it('proves first the joists that are not sure, and only those', () => {
    const unsure = fromMarks.certainty.filter(({ certainty }) => certainty !== 'sure').map(({ joist }) => joist);
    expect(fromMarks.proveFirst).toEqual(unsure);
    expect(unsure.length).toBeGreaterThan(0);
    for (const { certainty, probability } of fromMarks.certainty) {
      expect(certainty).toBe(probability >= 0.95 ? 'sure' : probability >= 0.75 ? 'check' : 'prove first');
    }
  });

  it('asks for the joists themselves first where these are open', () => {
    const plan = planned({ marks: [130, 1330].map((x): Mark => ({ x, y: 1500, kind: 'probe' })), direction: 'y', width: 50 });
    expect(codes(plan)).toContain('probe-joists-first');
    expect(plan.nextProbe?.find).toBe('timber');
    expect(plan.probes).toHaveLength(1);
  });

  it('survives JSON', () => {
    expect(JSON.parse(JSON.stringify(fromMarks))).toEqual(fromMarks);
  });
});

describe('a plan on joists that were given', () => {
  it('has nothing to probe', () => {
    expect(given.nextProbe).toBeNull();
    expect(given.probes).toEqual([]);
    expect(given.proveFirst).toEqual([]);
    expect(codes(given).filter((code) => code.startsWith('probe'))).toEqual([]);
  });
});

describe('what is printed', () => {
  const unproven = new Set(fromMarks.proveFirst);
  const open = fromMarks.layout.pieces.filter(({ ends }) => ends.some(({ joist }) => joist !== undefined && unproven.has(joist)));

  it('has no cut to an unproven joist as final', () => {
    const { columns, rows } = cutList(fromMarks);
    const [id, length, note] = ['piece', 'length', 'note'].map((name) => columns.indexOf(name));
    const cut = open.filter(({ ends }) => ends.some(({ made }) => made === 'cut'));
    expect(cut.length).toBeGreaterThan(0);
    for (const piece of cut) {
      const row = rows.find((each) => each[id] === piece.id);
      expect(row?.[length]).toBe(`~${Math.floor(piece.cutLength)}`);
      expect(row?.[note]).toMatch(/^not final: J\d+ (check|prove first), \d+ %/);
    }
    for (const row of rows) {
      const piece = fromMarks.layout.pieces.find((each) => each.id === row[id]);
      if (piece && !open.includes(piece)) expect(row[length]).toBe(Math.floor(piece.cutLength));
    }
    for (const sheet of [drawPlan(fromMarks), drawCutting(fromMarks)]) {
      expect(sheet).toContain(`~${Math.floor(cut[0].cutLength)}`);
      expect(sheet.replace(/<[^>]*>/g, ' ')).toContain('~');
    }
  });

  it('marks the only cross cut of a board, also where its piece lies at the far end', () => {
    const words = drawCutting(fromMarks).replace(/<[^>]*>/g, ' ');
    const cutOnce = fromMarks.layout.boards.filter(({ cuts }) => cuts.length === 1 && cuts[0].kind === 'cross');
    const unsure = cutOnce.filter(({ id }) => open.some(({ board }) => board === id));
    expect(unsure.length).toBeGreaterThan(0);
    for (const { cuts } of unsure) expect(words).toMatch(new RegExp(`~(${Math.floor(cuts[0].at)}|${Math.ceil(cuts[0].at)}) `));
  });

  it('has the certainty of each joist of a butt joint with its figure on the setting-out sheet', () => {
    const { columns, rows } = settingOut(fromMarks).joists;
    const note = columns.indexOf('note');
    for (const { joist, certainty, probability } of fromMarks.certainty) {
      const text = rows.find(([id]) => id === joist)?.[note];
      expect(text).toContain(`${certainty}, ${Math.floor(probability * 100 + 1e-9)} %`);
      expect(String(text).includes('prove before cutting to it')).toBe(certainty !== 'sure');
    }
    const without = rows.filter(([id]) => !fromMarks.certainty.some(({ joist }) => joist === id));
    expect(without.every((row) => row[note] === '')).toBe(true);
  });

  it('marks nothing where the joists were given', () => {
    expect(JSON.stringify(cutList(given))).not.toContain('~');
    expect(drawCutting(given).replace(/<[^>]*>/g, ' ')).not.toContain('~');
    expect(settingOut(given).joists.rows.every((row) => row[row.length - 1] === '')).toBe(true);
  });
});
